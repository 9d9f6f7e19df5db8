import { DRY_AIR_GAS_CONSTANT, STANDARD_GRAVITY } from '#basis/constants.ts'
import { filmAir } from '#science/heat/filmAir.ts'
import { laminarStreamNusselt, together } from '#science/heat/forcedConvection.ts'
import { verticalPlateCoefficient } from '#science/heat/naturalConvection.ts'

/** Gas that leaves the bottom's edge and rises along the bare side. */
export interface SideStream {
  /** What rises along the side [kg/s]. */
  readonly massFlow: number
  /** At the bottom's edge [K]. */
  readonly temperature: number
  /** [J/(kg K)] */
  readonly specificHeat: number
}

export interface SideHeat {
  /** From the gas into the pot; below zero where the pot warms the gas [W]. */
  readonly toPot: number
  /** From the gas to the outside through a skirt [W]. */
  readonly lost: number
}

/** Speed that hot gas reaches half way up, from its buoyancy alone: ½u² = g (H/2)(T − T₀)/T₀ [m/s]. */
const sideSpeed = (height: number, gas: number, ambient: number): number =>
  Math.sqrt(STANDARD_GRAVITY * height * Math.max(0, gas / ambient - 1))

/**
 * Coefficient between gas that streams up the side and the side [W/(m² K)]: laminar stream and free
 * convection together.
 */
export const sideCoefficient = (
  height: number,
  gas: number,
  side: number,
  ambient: number,
  pressure: number,
): number => {
  const film = filmAir((gas + side) / 2, pressure)
  const reynolds = (sideSpeed(height, gas, ambient) * height) / film.kinematicViscosity
  const forced = (laminarStreamNusselt(reynolds, film.prandtl) * film.conductivity) / height
  return together(forced, verticalPlateCoefficient(side, gas, height, pressure))
}

/**
 * Heat from a hot sheet to a bare upright side, while it draws in air [W]. Along the height z the sheet's
 * flow is m = m₀ + ez, e = α u √(ρρ₀) P by Ricou & Spalding's entrainment (from memory), and its excess θ
 * over the air falls by mixing and by heat to the side: m θ' = −eθ − (hP/c)(θ − θ_s). With n = hP/(ce) that
 * has the closed solution θ = nθ_s/(1 + n) + C m^−(1+n). No gas: free convection from the side to the air.
 */
export const openSideHeat = (
  stream: SideStream,
  perimeter: number,
  height: number,
  side: number,
  ambient: number,
  pressure: number,
  coefficient: number,
  entrainment: number,
): SideHeat => {
  const { massFlow: m0, temperature, specificHeat: c } = stream
  if (!(height > 0)) return { toPot: 0, lost: 0 }
  const area = perimeter * height
  if (!(m0 > 0) || temperature <= ambient)
    return {
      toPot: verticalPlateCoefficient(side, ambient, height, pressure) * area * (ambient - side),
      lost: 0,
    }
  const densities = Math.sqrt(1 / (ambient * temperature)) * (pressure / DRY_AIR_GAS_CONSTANT)
  const e = entrainment * sideSpeed(height, temperature, ambient) * densities * perimeter
  const excess = temperature - ambient
  const sideExcess = side - ambient
  const n = (coefficient * perimeter) / (c * e)
  const m1 = m0 + e * height
  const settled = (n * sideExcess) / (1 + n)
  // C m₀^−(1+n) is the part that dies out; its integral over z is (m₀/(ne))(1 − (m₀/m₁)^n) times it.
  const dying = excess - settled
  const integral = (dying * m0 * (1 - (m0 / m1) ** n)) / (n * e)
  return { toPot: coefficient * perimeter * ((settled - sideExcess) * height + integral), lost: 0 }
}
