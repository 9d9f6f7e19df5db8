import type { Coefficients } from '#science/coefficients.ts'
import { planDraught } from '#science/draft/build.ts'
import { damperFreeShare } from '#science/draft/damper.ts'
import type { Site } from '#science/site.ts'
import { describeMoment } from '#science/steady/describe.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import type { Regime } from '#science/steady/prediction.ts'
import { placeParts } from '#stove/assembly/place.ts'
import type { Stove } from '#stove/model.ts'
import { type Firing, withDamper } from './run.ts'

/** One setting of the damper. */
export interface DamperSetting {
  /** Bearing of the band's front mark [deg]. */
  readonly turned: number
  /** Of the intake's area that it leaves free [1]. */
  readonly free: number
  /** With the front half way down [W]; null where the fire goes out. */
  readonly firepower: number | null
  readonly regime: Regime | null
}

export interface Turndown {
  readonly settings: readonly DamperSetting[]
  /** Highest over lowest steady firepower of the settings that neither smoulder nor go out [1]; null for no damper. */
  readonly ratio: number | null
}

const SETTINGS = 16

/** Turns the damper through one pitch of its windows and asks each time how the fire burns. Null without a damper. */
export const turndown = (
  stove: Stove,
  firing: Firing,
  site: Site,
  coefficients: Coefficients,
): Turndown | null => {
  const band = [...stove.parts.entries()].find(([, part]) => part.role === 'damper')
  if (band === undefined) return null
  const [name, part] = band
  const placement = stove.assembly.find((entry) => entry.part === name)
  const windows = [...part.openings.values()].find((opening) => opening.kind === 'row')
  if (placement === undefined || windows?.kind !== 'row') return null
  const pitch = 360 / windows.count
  const settings: DamperSetting[] = []
  for (let i = 0; i < SETTINGS; i++) {
    const turned = placement.turned + (i * pitch) / SETTINGS
    settings.push(settingOf(withDamper(stove, turned), name, turned, firing, site, coefficients))
  }
  const burning = settings.flatMap(({ firepower, regime }) =>
    firepower !== null && regime !== 'smoulder' ? [firepower] : [],
  )
  return {
    settings,
    ratio: burning.length > 0 ? Math.max(...burning) / Math.min(...burning) : null,
  }
}

const settingOf = (
  stove: Stove,
  band: string,
  turned: number,
  firing: Firing,
  site: Site,
  coefficients: Coefficients,
): DamperSetting => {
  const out = { turned, free: freeShare(stove, band), firepower: null, regime: null }
  const planned = planDraught(stove)
  if (!planned.ok) return out
  const { fuel, lowerHeatingValue } = firing
  const model = createSteadyModel({ plan: planned.plan, fuel, site, coefficients, burntOff: true })
  const outcome = model.solve(0.5)
  if (!outcome.ok) return out
  const moment = describeMoment({
    plan: model.plan,
    state: outcome.state,
    position: 0.5,
    moisture: fuel.moisture,
    site,
    asFired: lowerHeatingValue,
    coefficients,
  })
  return { ...out, firepower: moment.firepower, regime: moment.regime }
}

/** Free area over all the area of the rows that the band reaches over [1]. */
const freeShare = (stove: Stove, band: string): number => {
  const placed = placeParts(stove)
  if (!placed.ok) return 1
  const damper = placed.value.find(({ name }) => name === band)
  const host = placed.value.find(({ name }) => name === damper?.placement.host)
  if (damper === undefined || host === undefined) return 1
  const shares = [...host.part.openings.values()].flatMap((opening) => {
    const share = opening.kind === 'row' ? damperFreeShare(opening, host, damper) : null
    return share === null ? [] : [share]
  })
  return shares.length === 0 ? 1 : Math.min(...shares)
}
