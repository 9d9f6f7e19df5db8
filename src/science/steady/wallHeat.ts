import { STEFAN_BOLTZMANN_CONSTANT } from '#basis/constants.ts'
import type { Front } from '#science/fire/front.ts'
import { AIR, specificHeat } from '#science/gas/blend.ts'
import { quickAirConductivity } from '#science/gas/transport.ts'
import { tinplateEmissivity } from '#science/heat/emissivity.ts'
import { verticalPlateCoefficient } from '#science/heat/naturalConvection.ts'
import { bookHeat, type GapPlaces, unknownOfWall } from './heatSystem.ts'
import type { GapWalls } from './wallModel.ts'
import type { Workspace } from './workspace.ts'

/** Developed laminar flow in a narrow gap with one warm wall: Nu = 4.86, Incropera table 8.2, from memory [1]. */
const GAP_NUSSELT = 4.86
/** Slow air in a wide space; from memory [1]. */
const STILL_AIR_NUSSELT = 4
/** Steel is soft and scales away well below this; only a bound for the iteration [K]. */
const HOTTEST_WALL = 2200

/** Nusselt number over the diameter of a node's space; times its gas's conductivity, the film coefficient on its walls [1/m]. */
export const filmScale = (w: Pick<Workspace, 'plan' | 'coefficients'>): Float64Array =>
  Float64Array.from(w.plan.nodes, ({ space, area }) => {
    const diameter = Math.sqrt((4 * area) / Math.PI)
    return (space === 'flame' ? w.coefficients.flameWallNusselt : STILL_AIR_NUSSELT) / diameter
  })

/** Effective emissivity between two grey surfaces, the inner one of area A₁, on A₁ [1]; concentric cylinders, any text. */
const effectiveEmissivity = (e1: number, e2: number, areaRatio: number): number =>
  1 / (1 / e1 + areaRatio * (1 / e2 - 1))

/** Books what the walls exchange with gas, gap, each other and the open air, and what flame and front send them. */
export const bookWalls = (w: Workspace, front: Front, dryFuelRate: number): void => {
  const { walls } = w
  for (let s = 0; s < walls.area.length; s++)
    walls.emissivity[s] = tinplateEmissivity(walls.temperature[s] as number, w.burntOff)
  bookSources(w, dryFuelRate * front.loss)
  bookContacts(w)
  for (let i = 0; i < walls.gaps.length; i++)
    bookGap(w, i, walls.gaps[i] as GapWalls, w.heat.gaps[i] as GapPlaces)
  bookFacing(w)
  bookOpenAir(w)
}

/** So that a wall that exchanges nothing stays as it is [W/K]. */
const LEAST_SLOPE = 1e-12

/** Flame radiation, what the front loses beside char, and what the tin stores or gives back in this time step [W]. */
const bookSources = (w: Workspace, frontLoss: number): void => {
  const { walls, burnt, heat } = w
  const { surplus, matrix, diagonal } = heat
  const first = unknownOfWall(w.plan.nodes.length, 0)
  for (let s = 0; s < walls.area.length; s++) {
    const node = walls.flameNode[s] as number
    const fromFlame = node < 0 ? 0 : (burnt[node] as number) * (walls.flameShare[s] as number)
    const storing = (walls.capacity[s] as number) * walls.step.perSecond
    walls.stored[s] = storing * ((walls.temperature[s] as number) - (walls.before[s] as number))
    walls.outward[s] = 0
    const ii = diagonal[first + s] as number
    surplus[first + s] = frontLoss * (walls.besideChar[s] as number) + fromFlame - (walls.stored[s] as number)
    matrix[ii] = storing + LEAST_SLOPE
  }
}

/** Air's conductivity rises with about this power of its temperature; for slopes only [1]. */
const CONDUCTIVITY_POWER = 0.8
/** A slope is not taken below this share of the conductance, which keeps the matrix dominant [1]. */
const LEAST_SHARE = 0.1

/** Conduction through the gas film on every wall that a node's gas touches. */
const bookContacts = (w: Workspace): void => {
  const { walls, heat, temperature, filmPerConductivity, contact } = w
  const { contacts, area } = walls
  for (let c = 0; c < contacts.length; c++) {
    const { wall, node } = contacts[c] as (typeof contacts)[number]
    const warmth = temperature[node] as number
    const g = (filmPerConductivity[node] as number) * quickAirConductivity(warmth) * (area[wall] as number)
    const flow = g * ((walls.temperature[wall] as number) - warmth)
    // Warmer gas conducts better, which helps what cools it and hinders what heats it.
    const byGas = Math.max(LEAST_SHARE * g, g - (CONDUCTIVITY_POWER * flow) / warmth)
    contact.heat[c] = flow
    contact.byWall[c] = g
    contact.byGas[c] = byGas
    bookHeat(heat, unknownOfWall(w.plan.nodes.length, wall), node, heat.contacts, 4 * c, flow, g, byGas)
  }
}

/**
 * Air that rises in a gap nears the mean temperature of its two walls as 1 − e^(−NTU): what it takes up can never be more
 * than they have to give. A wall gives its part of that, and of what it is warmer by than their mean.
 */
const bookGap = (
  w: Workspace,
  index: number,
  { link, walls: along, weights, area }: GapWalls,
  { unknowns, places, gets, gives }: GapPlaces,
): void => {
  const { table, forward, back, temperature, walls, heat, gapTaken } = w
  const { surplus, matrix } = heat
  const total = Math.max((forward[link] as number) + (back[link] as number), LEAST_FLOW)
  const share = (forward[link] as number) / total
  const enters =
    share * (temperature[table.from[link] as number] as number) +
    (1 - share) * (temperature[table.to[link] as number] as number)
  const diameter = w.plan.links[link]?.hydraulicDiameter ?? 1
  const film = (GAP_NUSSELT * quickAirConductivity(walls.gapTemperature[index] as number)) / diameter
  const conductance = film * area
  const capacity = total * specificHeat(AIR, enters)
  const reached = capacity * (1 - Math.exp(-conductance / capacity))
  let mean = 0
  for (let i = 0; i < along.length; i++)
    mean += (weights[i] as number) * (walls.temperature[along[i] as number] as number)
  const taken = reached * (mean - enters)
  gapTaken.conductance[index] = reached
  gapTaken.share[index] = share
  gapTaken.film[index] = conductance

  // The heat goes on the way the air goes; each wall gives by its share of the area.
  gets[0] = 1 - share
  gets[1] = share
  // What the air takes falls as it comes in warmer, and rises with the walls; `gives` for the latter are their weights.
  gives[0] = -share
  gives[1] = share - 1
  const members = unknowns.length
  for (let i = 0, at = 0; i < members; i++) {
    const row = unknowns[i] as number
    const part = gets[i] as number
    const slope = reached * part
    surplus[row] = (surplus[row] as number) + part * taken
    for (let j = 0; j < members; j++, at++) {
      const ij = places[at] as number
      matrix[ij] = (matrix[ij] as number) - slope * (gives[j] as number)
    }
  }
  for (let i = 0; i < along.length; i++) {
    const g = conductance * (weights[i] as number)
    const row = unknowns[i + 2] as number
    surplus[row] = (surplus[row] as number) - g * ((walls.temperature[along[i] as number] as number) - mean)
    const start = (i + 2) * members + 2
    for (let j = 0; j < along.length; j++) {
      const ij = places[start + j] as number
      matrix[ij] = (matrix[ij] as number) + g * ((i === j ? 1 : 0) - (weights[j] as number))
    }
  }
}

/** So that a gap without flow has an end [kg/s]. */
const LEAST_FLOW = 1e-12

/** Radiation between walls that face each other. */
const bookFacing = (w: Workspace): void => {
  const { walls, heat } = w
  const { facing, area, temperature, emissivity } = walls
  const nodes = w.plan.nodes.length
  for (let f = 0; f < facing.length; f++) {
    const { inner, outer } = facing[f] as (typeof facing)[number]
    const a = area[inner] as number
    const between = effectiveEmissivity(
      emissivity[inner] as number,
      emissivity[outer] as number,
      a / (area[outer] as number),
    )
    const g = STEFAN_BOLTZMANN_CONSTANT * between * a
    const t1 = temperature[inner] as number
    const t2 = temperature[outer] as number
    const cube1 = t1 * t1 * t1
    const cube2 = t2 * t2 * t2
    bookHeat(
      heat,
      unknownOfWall(nodes, inner),
      unknownOfWall(nodes, outer),
      heat.facing,
      4 * f,
      g * (cube1 * t1 - cube2 * t2),
      4 * g * cube1,
      4 * g * cube2,
    )
  }
}

/** Convection and radiation to the open air. */
const bookOpenAir = (w: Workspace): void => {
  const { walls, heat, site, openSlope } = w
  const { open, area, temperature, emissivity, outward } = walls
  const { surplus, matrix, diagonal } = heat
  const first = unknownOfWall(w.plan.nodes.length, 0)
  const ambient = site.temperature
  const cubeOut = ambient * ambient * ambient
  for (let o = 0; o < open.length; o++) {
    const { wall, height, counts } = open[o] as (typeof open)[number]
    const a = area[wall] as number
    const here = temperature[wall] as number
    const g = verticalPlateCoefficient(here, ambient, height, site.pressure) * a
    const radiates = STEFAN_BOLTZMANN_CONSTANT * (emissivity[wall] as number) * a
    const cube = here * here * here
    const lost = g * (here - ambient) + radiates * (cube * here - cubeOut * ambient)
    // h rises with the fourth root of the difference.
    const slope = 1.25 * g + 4 * radiates * cube
    const ii = diagonal[first + wall] as number
    surplus[first + wall] = (surplus[first + wall] as number) - lost
    matrix[ii] = (matrix[ii] as number) + slope
    openSlope[o] = slope
    if (counts) outward[wall] = lost
  }
}

/**
 * Takes the changes that the heat balances ask for, and what they make of the heat that walls give to the gas, lose and
 * store. Returns the largest change of a wall's temperature [K].
 */
export const changeWalls = (w: Workspace): number => {
  const { walls, heat, site, temperature, contact, openSlope, table, gapTaken } = w
  const { surplus } = heat
  const { contacts, open, gaps, outward, stored, capacity, step } = walls
  const first = unknownOfWall(w.plan.nodes.length, 0)
  let fromWalls = 0
  for (let c = 0; c < contacts.length; c++) {
    const { wall, node } = contacts[c] as (typeof contacts)[number]
    fromWalls +=
      (contact.heat[c] as number) +
      (contact.byWall[c] as number) * (surplus[first + wall] as number) -
      (contact.byGas[c] as number) * (surplus[node] as number)
  }
  for (let i = 0; i < gaps.length; i++) {
    const { link, walls: along, weights } = gaps[i] as GapWalls
    const a = table.from[link] as number
    const b = table.to[link] as number
    const share = gapTaken.share[i] as number
    const reached = gapTaken.conductance[i] as number
    let mean = 0
    for (let j = 0; j < along.length; j++) {
      const s = along[j] as number
      mean += (weights[j] as number) * ((walls.temperature[s] as number) + (surplus[first + s] as number))
    }
    const enters =
      share * ((temperature[a] as number) + (surplus[a] as number)) +
      (1 - share) * ((temperature[b] as number) + (surplus[b] as number))
    const taken = reached * (mean - enters)
    w.gapHeat[link] = taken
    walls.gapTemperature[i] = mean - taken / (gapTaken.film[i] as number)
    fromWalls += taken
  }
  w.ledger.fromWalls = fromWalls
  for (let o = 0; o < open.length; o++) {
    const { wall, counts } = open[o] as (typeof open)[number]
    if (counts)
      outward[wall] = (outward[wall] as number) + (openSlope[o] as number) * (surplus[first + wall] as number)
  }
  let most = 0
  for (let s = 0; s < walls.area.length; s++) {
    const change = surplus[first + s] as number
    most = Math.max(most, Math.abs(change))
    stored[s] = (stored[s] as number) + (capacity[s] as number) * step.perSecond * change
    const next = (walls.temperature[s] as number) + change
    walls.temperature[s] = Math.min(HOTTEST_WALL, Math.max(site.temperature - 1, next))
  }
  return most
}
