import { filmAir } from '#science/heat/filmAir.ts'
import { radiationCoefficient } from '#science/heat/greyRadiation.ts'
import { enteringNusselt, ringNusselt } from '#science/heat/laminarDuct.ts'
import { verticalPlateCoefficient } from '#science/heat/naturalConvection.ts'
import type { SideHeat, SideStream } from './openSide.ts'

/** A sheet bent round the pot that keeps the gas at its side. */
export interface Skirt {
  /** Between pot and skirt [m]. */
  readonly gap: number
  /** Of skirt beside the pot [m]. */
  readonly height: number
  /** Of its inner and outer face [1]. */
  readonly emissivity: number
}

/** Reynolds number of the gap flow on twice its width, 2ṁ/(πD_mean μ) [1]. Laminar below 2300. */
export const skirtReynolds = (
  massFlow: number,
  potDiameter: number,
  gap: number,
  viscosity: number,
): number => (2 * massFlow) / (Math.PI * (potDiameter + gap) * viscosity)

/**
 * Heat from gas in the gap under a skirt [W]: laminar flow in a ring gap, entry included, to the pot's side
 * and to the skirt, which passes some on to the pot by radiation and loses some to the air. The skirt's
 * balance is linear in the gas's temperature, so that the gas cools as an exponential. `potEmissivity` is the
 * side's. Without gas it is the still gap.
 */
export const skirtHeat = (
  stream: SideStream,
  potDiameter: number,
  skirt: Skirt,
  side: number,
  ambient: number,
  pressure: number,
  potEmissivity: number,
): SideHeat => {
  const { massFlow, temperature, specificHeat } = stream
  const { gap, height, emissivity } = skirt
  if (!(height > 0)) return { toPot: 0, lost: 0 }
  const film = filmAir((temperature + side) / 2, pressure)
  const hydraulic = 2 * gap
  const graetz =
    (skirtReynolds(massFlow, potDiameter, gap, film.viscosity) * film.prandtl * hydraulic) / height
  const ratio = potDiameter / (potDiameter + 2 * gap)
  const on = (wall: 'inner' | 'outer'): number =>
    (enteringNusselt(ringNusselt(ratio, wall), graetz) * film.conductivity) / hydraulic
  const toSide = on('inner')
  const toSkirt = on('outer')
  // Half way between gas and pot is near enough to make the skirt's radiation and its loss linear.
  const guess = (temperature + side) / 2
  const areaRatio = ratio
  const radiant = radiationCoefficient(
    areaRatio / (1 / potEmissivity + areaRatio * (1 / emissivity - 1)),
    guess,
    side,
  )
  const outward =
    verticalPlateCoefficient(guess, ambient, height, pressure) +
    radiationCoefficient(emissivity, guess, ambient)
  const sum = toSkirt + radiant + outward
  const potPerimeter = Math.PI * potDiameter
  const skirtPerimeter = potPerimeter / ratio
  // A metre of height takes potPerimeter·toSide·(T − side) + skirtPerimeter·toSkirt·(T − skirt) from the gas.
  const slope = potPerimeter * toSide + skirtPerimeter * toSkirt * (1 - toSkirt / sum)
  const fixed =
    potPerimeter * toSide * side + (skirtPerimeter * toSkirt * (radiant * side + outward * ambient)) / sum
  const settled = fixed / slope
  const transferUnits = (slope * height) / (massFlow * specificHeat)
  const cooled = (temperature - settled) * -Math.expm1(-transferUnits)
  const meanGas = settled + cooled / transferUnits
  const meanSkirt = (toSkirt * meanGas + radiant * side + outward * ambient) / sum
  return {
    toPot:
      height * (potPerimeter * toSide * (meanGas - side) + skirtPerimeter * radiant * (meanSkirt - side)),
    lost: height * skirtPerimeter * outward * (meanSkirt - ambient),
  }
}
