import { fromMillimetres, type Metres } from '#basis/units.ts'
import type { FacetOptions } from '../solid/facets.ts'

export interface GuideOptions {
  /** Left free on the diameter between guide and can, for what a printer lays down too wide [m]. */
  readonly clearance: Metres
  /** How much of the bit the guide holds [m]. */
  readonly wall: Metres
  /** `pilot`: every hole starts with the pilot bit; `full`: with the bit of its own size. */
  readonly bit: 'pilot' | 'full'
  readonly pilot: Metres
  /** Room on the printer: across, deep and high [m]. */
  readonly bed: { readonly width: Metres; readonly depth: Metres; readonly height: Metres }
  readonly facets: FacetOptions
}

export const GUIDE_DEFAULTS: GuideOptions = {
  // Common practice, no source.
  clearance: fromMillimetres(0.3),
  // Two and a half times a 3 mm bit: common practice, no source.
  wall: fromMillimetres(8),
  bit: 'pilot',
  pilot: fromMillimetres(3),
  // The bed of the usual home printer; from memory.
  bed: { width: fromMillimetres(220), depth: fromMillimetres(220), height: fromMillimetres(250) },
  facets: { chord: 0.02 },
}

/** A guide hole is this much wider than its bit, so that the bit turns freely [mm]. Common practice, no source. */
export const BIT_PLAY = 0.2
