import { waterDensity } from './water.ts'

/** A straight-sided pot with a flat bottom. */
export interface Pot {
  /** Outside [m]. */
  readonly diameter: number
  /** Outside, bottom to rim [m]. */
  readonly height: number
  readonly lid: boolean
  /** Wall and bottom alike [m]. */
  readonly wall: number
  readonly metal: PotMetal
}

/**
 * What pots are made of: conductivity [W/(m K)], density [kg/m³], heat capacity [J/(kg K)]; handbook values
 * from memory.
 */
const potMetal = {
  aluminium: { conductivity: 200, density: 2700, heat: 900 },
  'stainless steel': { conductivity: 16, density: 8000, heat: 500 },
  steel: { conductivity: 50, density: 7850, heat: 480 },
  titanium: { conductivity: 20, density: 4500, heat: 530 },
} as const

export type PotMetal = keyof typeof potMetal

const discArea = (diameter: number): number => (Math.PI / 4) * diameter * diameter

/** Outside of the bottom [m²]. */
export const bottomArea = ({ diameter }: Pot): number => discArea(diameter)

/** Inside, to the rim [m³]. */
export const potVolume = ({ diameter, height, wall }: Pot): number =>
  discArea(diameter - 2 * wall) * (height - wall)

/**
 * How deep so much water stands [m]; more than `height − wall` means that the pot runs over: ask `potVolume`
 * first.
 */
export const waterDepth = ({ diameter, wall }: Pot, waterMass: number, temperature: number): number =>
  waterMass / (waterDensity(temperature) * discArea(diameter - 2 * wall))

/** Mass of the pot and its lid, a disc of the same sheet [kg]. */
const potMass = ({ diameter, height, wall, lid, metal }: Pot): number =>
  potMetal[metal].density * wall * ((lid ? 2 : 1) * discArea(diameter) + Math.PI * diameter * height)

/** Heat that warms the empty pot by one kelvin [J/K]. */
export const potHeatCapacity = (pot: Pot): number => potMass(pot) * potMetal[pot.metal].heat

/**
 * Height of side that is as good as wet [m]: up to the water, and above it as a fin that carries heat down,
 * tanh(mL)/m with m = √(h/(kt)), any text. `coefficient` is the outer side's [W/(m² K)].
 */
export const workingSide = (pot: Pot, depth: number, coefficient: number): number => {
  const wet = Math.min(pot.height, depth + pot.wall)
  const dry = pot.height - wet
  if (!(dry > 0) || !(coefficient > 0)) return wet
  const m = Math.sqrt(coefficient / (potMetal[pot.metal].conductivity * pot.wall))
  return wet + Math.tanh(m * dry) / m
}
