import { STEFAN_BOLTZMANN_CONSTANT } from '#basis/constants.ts'
import type { WallSide, WallStretch } from '#science/draft/plan.ts'
import type { Front } from '#science/fire/front.ts'
import { AIR, specificHeat } from '#science/gas/blend.ts'
import { quickAirConductivity } from '#science/gas/transport.ts'
import { tinplateEmissivity } from '#science/heat/emissivity.ts'
import { verticalPlateCoefficient } from '#science/heat/naturalConvection.ts'
import { forwardFlow } from './exchange.ts'
import type { FrontPlace, Workspace } from './workspace.ts'

/** Effective emissivity between two grey surfaces, the inner one of area A₁, on A₁ [1]; concentric cylinders, any text. */
const effectiveEmissivity = (e1: number, e2: number, areaRatio: number): number =>
  1 / (1 / e1 + areaRatio * (1 / e2 - 1))

/** Developed laminar flow in a narrow gap with one warm wall: Nu = 4.86, Incropera table 8.2, from memory [1]. */
const GAP_NUSSELT = 4.86
/** Steel is soft and scales away well below this; only a bound for the iteration [K]. */
const HOTTEST_WALL = 1800
/** Slow air in a wide space; from memory [1]. */
const STILL_AIR_NUSSELT = 4

/** From the gas of a space to its wall [W/(m² K)]. */
const nodeCoefficient = (w: Workspace, node: number): number => {
  const { space, area } = w.plan.nodes[node] as (typeof w.plan.nodes)[number]
  const diameter = Math.sqrt((4 * area) / Math.PI)
  const nusselt = space === 'flame' ? w.coefficients.flameWallNusselt : STILL_AIR_NUSSELT
  return (nusselt * quickAirConductivity(w.temperature[node] as number)) / diameter
}

const gapCoefficient = (w: Workspace, link: number): number =>
  (GAP_NUSSELT * quickAirConductivity(w.walls.gapTemperature[link] as number)) /
  (w.plan.links[link]?.hydraulicDiameter ?? 1)

/**
 * Brings the walls nearer to balance with the gas as it is, and works out what they take from the flame and give to the
 * gap. Returns the largest change of a wall's temperature [K].
 */
export const balanceWalls = (w: Workspace, front: Front, place: FrontPlace, dryFuelRate: number): number => {
  const { walls } = w
  setSources(w, front, place, dryFuelRate)
  let change = 0
  for (let s = 0; s < walls.stretches.length; s++) change = Math.max(change, balanceOne(w, s))
  settleGaps(w)
  w.wallConductance.fill(0)
  w.wallDrive.fill(0)
  for (let s = 0; s < walls.stretches.length; s++) {
    const { inside, outside } = walls.stretches[s] as WallStretch
    coupleNode(w, inside, s)
    coupleNode(w, outside, s)
  }
  return change
}

/** Adds a wall to what its node exchanges with walls. */
const coupleNode = (w: Workspace, side: WallSide, s: number): void => {
  if (side.kind !== 'node') return
  const { node } = side
  const g = nodeCoefficient(w, node) * (w.walls.area[s] as number)
  w.wallConductance[node] = (w.wallConductance[node] as number) + g
  w.wallDrive[node] = (w.wallDrive[node] as number) + g * (w.walls.temperature[s] as number)
}

/** Height of a stretch that lies beside char between two heights [m]. */
const besideChar = ({ inside, bottom, top: upTo }: WallStretch, from: number, top: number): number =>
  inside.kind === 'bed' ? Math.max(0, Math.min(upTo, top) - Math.max(bottom, from)) : 0

/** Heat that reaches a wall other than through its gas: flame radiation, and what the front loses beside char [W]. */
const setSources = (w: Workspace, front: Front, place: FrontPlace, dryFuelRate: number): void => {
  const { walls, plan, coefficients } = w
  const { bed } = plan
  const top = bed.base + bed.depth
  // At least the topmost millimetre of the bed glows as soon as it is lit.
  const from = Math.min(bed.base + place.height, top - 1e-3)
  let charLength = 0
  for (let s = 0; s < walls.stretches.length; s++)
    charLength += besideChar(walls.stretches[s] as WallStretch, from, top)
  const frontLoss = dryFuelRate * front.loss
  for (let s = 0; s < walls.stretches.length; s++) {
    const stretch = walls.stretches[s] as WallStretch
    let source = charLength > 0 ? (frontLoss * besideChar(stretch, from, top)) / charLength : 0
    if (stretch.inside.kind === 'node') {
      const { node } = stretch.inside
      const share = (walls.area[s] as number) / (walls.sideArea[node] as number)
      source +=
        coefficients.flameRadiation * (w.burnt[node] as number) * (walls.sideShare[node] as number) * share
    }
    walls.source[s] = source
  }
}

/** One Newton step of a wall stretch towards balance with everything it exchanges heat with; returns it [K]. */
const balanceOne = (w: Workspace, s: number): number => {
  const { walls, site } = w
  const { stretches, temperature, area, facing, facedBy, outward } = walls
  const stretch = stretches[s] as WallStretch
  const a = area[s] as number
  const here = temperature[s] as number
  const e = tinplateEmissivity(here, w.burntOff)
  let surplus = walls.source[s] as number
  let convection = 0
  let slope = 0
  const conduct = (g: number, other: number): void => {
    surplus -= g * (here - other)
    slope += g
  }
  const radiate = (emissivity: number, onArea: number, other: number): void => {
    const g = STEFAN_BOLTZMANN_CONSTANT * emissivity * onArea
    surplus -= g * (here ** 4 - other ** 4)
    slope += 4 * g * here ** 3
  }
  const side = (on: WallSide): void => {
    if (on.kind === 'node') conduct(nodeCoefficient(w, on.node) * a, w.temperature[on.node] as number)
    else if (on.kind === 'gap')
      conduct(gapCoefficient(w, on.link) * a, walls.gapTemperature[on.link] as number)
    else if (on.kind === 'open air') {
      const height = stretch.top - stretch.bottom
      const g = verticalPlateCoefficient(here, site.temperature, height, site.pressure) * a
      if (on === stretch.outside) convection = g
      conduct(g, site.temperature)
      // h rises with the fourth root of the difference.
      slope += g / 4
      radiate(e, a, site.temperature)
    }
  }
  side(stretch.inside)
  side(stretch.outside)
  const across = facing[s] as number
  if (across >= 0) {
    const other = temperature[across] as number
    const emissivity = effectiveEmissivity(
      e,
      tinplateEmissivity(other, w.burntOff),
      a / (area[across] as number),
    )
    radiate(emissivity, a, other)
  }
  for (const inner of facedBy[s] ?? []) {
    const other = temperature[inner] as number
    const onArea = area[inner] as number
    const emissivity = effectiveEmissivity(tinplateEmissivity(other, w.burntOff), e, onArea / a)
    radiate(emissivity, onArea, other)
  }
  const storing = (walls.capacity[s] as number) * walls.step.perSecond
  surplus -= storing * (here - (walls.before[s] as number))
  slope += storing
  const step = slope > 0 ? surplus / slope : 0
  const next = Math.min(HOTTEST_WALL, Math.max(site.temperature - 1, here + step))
  temperature[s] = next
  walls.stored[s] = storing * (here - (walls.before[s] as number))
  if (stretch.outside.kind === 'open air')
    outward[s] =
      convection * (here - site.temperature) +
      STEFAN_BOLTZMANN_CONSTANT * e * a * (here ** 4 - site.temperature ** 4)
  return Math.abs(next - here)
}

/**
 * Air that rises in a gap nears the mean temperature of its two walls as 1 − e^(−NTU): what it takes up can never be more
 * than they have to give. Sets what the next transport needs, and the mean air temperature that the walls feel.
 */
const settleGaps = (w: Workspace): void => {
  const { plan, walls, solver } = w
  for (const k of w.gapLinks) {
    const link = plan.links[k] as (typeof plan.links)[number]
    const net = solver.flow[k] as number
    const forward = forwardFlow(net, w.exchange[k] as number)
    const total = Math.max(2 * forward - net, 1e-12)
    const share = forward / total
    const enters =
      share * (w.temperature[link.from] as number) + (1 - share) * (w.temperature[link.to] as number)
    let conductance = 0
    let driven = 0
    for (const s of walls.alongGap[k] ?? []) {
      const g = gapCoefficient(w, k) * (walls.area[s] as number)
      conductance += g
      driven += g * (walls.temperature[s] as number)
    }
    if (conductance === 0) continue
    const wall = driven / conductance
    const capacity = total * specificHeat(AIR, enters)
    const reached = capacity * (1 - Math.exp(-conductance / capacity))
    w.gapConductance[k] = reached
    w.gapWall[k] = wall
    w.gapShare[k] = share
    walls.gapTemperature[k] = wall - (reached * (wall - enters)) / conductance
  }
}
