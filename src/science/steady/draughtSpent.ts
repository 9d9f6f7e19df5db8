import type { Coefficients } from '#science/coefficients.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { CREEPING_HOLE_LOSS } from '#science/draft/resistance.ts'
import type { SteadyState } from './state.ts'

/**
 * Power that the net flow through a passage takes from the draught [W].
 *
 * Wind parts a row into holes that feel different pressures, and blows in through some and out through others. What
 * that costs, the wind pays, and it moves nothing through the fire: counted is what the row would take if its net flow
 * went evenly through all its holes. Without wind that is all it takes. `members` are the links of one row.
 */
export const draughtSpent = (
  { links }: DraughtPlan,
  members: readonly number[],
  { flow, drive, density, viscosity }: SteadyState,
  coefficients: Coefficients,
): number => {
  const link = links[members[0] ?? -1]
  if (link?.rowShare === undefined)
    return members.reduce(
      (sum, k) => sum + Math.abs((flow[k] as number) * (drive[k] as number)) / (density[k] as number),
      0,
    )
  const net = members.reduce((sum, k) => sum + (flow[k] as number), 0)
  if (net === 0) return 0
  // The gas is that of the holes that run with the net flow.
  let along = 0
  let volume = 0
  let thickness = 0
  for (const k of members) {
    const m = (flow[k] as number) * Math.sign(net)
    if (m <= 0) continue
    along += m
    volume += m / (density[k] as number)
    thickness += m * (viscosity[k] as number)
  }
  const passing = along / volume
  const { shape, rowShare } = link
  const creep = coefficients.creepingHoleLoss / CREEPING_HOLE_LOSS
  const viscous = (creep * shape.viscous * rowShare * (thickness / along)) / passing
  const inertial = (shape.inertial * rowShare ** 2) / passing
  const amount = Math.abs(net)
  return (amount * (viscous * amount + inertial * amount ** 2)) / passing
}
