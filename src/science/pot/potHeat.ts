import { filmAir } from '#science/heat/filmAir.ts'
import { greyFlux } from '#science/heat/greyRadiation.ts'
import { LAMINAR_DUCT_RANGE } from '#science/heat/laminarDuct.ts'
import { isInside, type ValidRange } from '#science/heat/range.ts'
import type { MoistAir } from '#science/weather/moistAir.ts'
import { bottomRadiation, flameShareOnBottom, type HotBody } from './bottomRadiation.ts'
import type { PotCoefficients } from './coefficients.ts'
import { EVAPORATION_RANGE } from './evaporation.ts'
import { openSideHeat, type SideStream, sideCoefficient } from './openSide.ts'
import { bottomArea, type Pot, waterDepth, workingSide } from './pot.ts'
import { potTop } from './potTop.ts'
import { type Skirt, skirtHeat, skirtReynolds } from './skirt.ts'
import { type BottomFlow, bottomConductance, openingReynolds, UNDER_POT_RANGE } from './underBottom.ts'

export interface PotHeatInput {
  readonly pot: Pot
  readonly waterMass: number
  /**
   * Of the water, well stirred; pot and water share it: the water's side and the metal resist hardly at all
   * [K].
   */
  readonly waterTemperature: number
  /** Hot gas that comes up under the pot. */
  readonly gas: {
    /** [kg/s] */
    readonly massFlow: number
    /** Its mean as it arrives [K]. */
    readonly temperature: number
    /** Mean between there and the pot [J/(kg K)]. */
    readonly specificHeat: number
  }
  /** Opening that the gas comes from: bore, riser or stand [m]. */
  readonly openingDiameter: number
  /** From that opening's plane up to the bottom [m]. */
  readonly gap: number
  readonly flame: {
    /** Heat that it radiates [W]. */
    readonly radiated: number
    /** Above the opening's plane [m]. */
    readonly height: number
  }
  readonly bodies: readonly HotBody[]
  readonly skirt: Skirt | null
  readonly air: MoistAir
  /** At the pot, behind any screen [m/s]. */
  readonly windSpeed: number
}

/**
 * Heat in and out of a pot at one moment. Net into pot and water: bottomConvection + bottomRadiation + side −
 * loss.
 */
export interface PotHeat {
  /** From the gas to the bottom [W]. */
  readonly bottomConvection: number
  /** From flame, char and hot tin to the bottom [W]. */
  readonly bottomRadiation: number
  /** From the gas to the side; below zero where the side warms it [W]. */
  readonly side: number
  /** From lid or water and from the side to the surroundings, escaping steam included [W]. */
  readonly loss: number
  /**
   * What of the loss is steam [W] and how much steam [kg/s]. At the boiling point a net gain makes more of
   * it.
   */
  readonly evaporation: number
  readonly steam: number
  /** From the gas through a skirt to the outside [W]. */
  readonly skirtLoss: number
  /** The gas at the bottom's edge, before the side [K]. */
  readonly edgeTemperature: number
  /** Correlations that were used outside the range they were fitted in. */
  readonly outside: readonly ValidRange[]
}

/**
 * Heat into a pot over a stove and out of it, steady at one water temperature. Bottom: laminar boundary layer
 * and buoyancy, the gas cooling as it passes, 1 − e^(−NTU), so that it never gives more than it has. Side:
 * bare, in a hot sheet that draws in air, or in the gap of a skirt. Radiation from the flame as a line, from
 * char and tin as grey bodies. Top: lid or open water. Wind cools top and lid only; that it blows the hot
 * sheet away is `potSideCatch`.
 */
export const potHeat = (input: PotHeatInput, coefficients: PotCoefficients): PotHeat => {
  const { pot, gas, air, skirt, waterTemperature: water } = input
  const flow: BottomFlow = {
    massFlow: gas.massFlow,
    openingDiameter: input.openingDiameter,
    gap: input.gap,
    potDiameter: pot.diameter,
  }
  const filmTemperature = (gas.temperature + water) / 2
  const film = filmAir(filmTemperature, air.pressure)
  const capacity = gas.massFlow * gas.specificHeat
  const difference = gas.temperature - water
  const conductance =
    coefficients.potBottom *
    bottomConductance(flow, film, filmTemperature, difference, coefficients.potJetGradient)
  const cooled = capacity > 0 ? difference * -Math.expm1(-conductance / capacity) : 0
  const bottomConvection = capacity * cooled
  const edge = capacity > 0 ? gas.temperature - cooled : air.temperature

  const emissivity = coefficients.potSootEmissivity
  const radiation = bottomRadiation(
    input.flame.radiated,
    flameShareOnBottom(input.gap, input.flame.height, pot.diameter / 2),
    input.bodies,
    bottomArea(pot),
    emissivity,
    water,
  )

  const caught = gas.massFlow * (skirt === null ? coefficients.potSideCatch : coefficients.potSkirtCatch)
  const stream: SideStream = { massFlow: caught, temperature: edge, specificHeat: gas.specificHeat }
  const perimeter = Math.PI * pot.diameter
  const depth = waterDepth(pot, input.waterMass, water)
  const guess = coefficients.potSide * sideCoefficient(pot.height, edge, water, air.temperature, air.pressure)
  const wetted = workingSide(pot, depth, guess)
  const covered = skirt === null ? 0 : Math.min(skirt.height, wetted)
  const sideHeat =
    skirt === null
      ? openSideHeat(
          stream,
          perimeter,
          wetted,
          water,
          air.temperature,
          air.pressure,
          coefficients.potSide * sideCoefficient(wetted, edge, water, air.temperature, air.pressure),
          coefficients.potSideEntrainment,
        )
      : skirtHeat(
          stream,
          pot.diameter,
          { ...skirt, height: covered },
          water,
          air.temperature,
          air.pressure,
          emissivity,
        )

  const top = potTop(pot, water, air, input.windSpeed, coefficients)
  // A skirt shades the side; bare, it shines at the surroundings.
  const sideRadiation =
    greyFlux(emissivity, water, air.temperature) * perimeter * Math.max(0, wetted - covered)

  const outside: ValidRange[] = []
  const check = (range: ValidRange, value: number): void => {
    if (!isInside(range, value)) outside.push(range)
  }
  if (gas.massFlow > 0) check(UNDER_POT_RANGE, openingReynolds(flow, film.viscosity))
  if (skirt !== null)
    check(LAMINAR_DUCT_RANGE, skirtReynolds(caught, pot.diameter, skirt.gap, film.viscosity))
  check(EVAPORATION_RANGE, water - 273.15)

  return {
    bottomConvection,
    bottomRadiation: radiation,
    side: sideHeat.toPot,
    loss: top.convection + top.radiation + top.evaporation + sideRadiation,
    evaporation: top.evaporation,
    steam: top.steam,
    skirtLoss: sideHeat.lost,
    edgeTemperature: edge,
    outside,
  }
}
