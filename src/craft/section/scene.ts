import { orThrow } from '#basis/problem.ts'
import type { Stove } from '#stove/model.ts'
import type { AirState, BurnSummary } from './airState.ts'
import type { BedMoment } from './bed.ts'
import { type SectionGeometry, sectionGeometry } from './geometry.ts'
import { bedLabels, openingLabels, partLabels, type SectionLabel } from './labels.ts'
import { extentOf, type SectionExtent } from './picture.ts'
import { type AirPicture, airPicture } from './ribbons.ts'

/** Everything a page or the live picture draws of one stove at one moment, before any page is chosen. */
export interface Scene {
  readonly section: SectionGeometry
  readonly state: AirState | null
  readonly air: AirPicture | null
  readonly extent: SectionExtent
  readonly openings: readonly SectionLabel[]
  readonly parts: readonly SectionLabel[]
  /** What lies in the fuel can. */
  readonly fuel: readonly SectionLabel[]
}

/**
 * Cuts a stove open and lays its air into it. Without a burn the fuel is not lit and nothing flows.
 * @throws BadInput for an assembly that `placeParts` refuses; a stove read from a file never fails here.
 */
export const sceneOf = (stove: Stove, burn: BurnSummary | null): Scene =>
  momentScene(stove, burn?.halfway ?? null)

/** The same at any moment of a burn. */
export const momentScene = (stove: Stove, state: AirState | null, moment: BedMoment = {}): Scene => {
  const section = orThrow(sectionGeometry(stove, state?.frontPosition ?? 0, moment))
  const air = state === null ? null : airPicture(section, state)
  const gates = air?.gates ?? []
  const fuel = bedLabels(section, state?.temperature.front ?? null)
  return {
    section,
    state,
    air,
    extent: extentOf(section, air),
    openings: openingLabels(section, state?.passages ?? [], gates, air?.widthPerFlow ?? 0),
    parts: partLabels(section, gates, fuel),
    fuel,
  }
}
