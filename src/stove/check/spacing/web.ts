import type { Finding, WallHole } from '#stove/model.ts'
import { TIN } from '../rules.ts'

/** How much tin has to stay beside an opening [m]. */
export interface Web {
  /** Below this the tin will not hold. */
  readonly least: number
  /** Below this it is likely to tear. */
  readonly poor: number
  /** From here on nothing is said. */
  readonly full: number
}

/** Tin wanted beside a drilled hole: a drill tears by its width, not by the sheet's. */
export const webOfHole = (diameter: number, sheet: number): Web => {
  const least = TIN.holeToHole.value * sheet
  return {
    least,
    poor: Math.max(least, TIN.poorWeb.value * diameter),
    full: Math.max(least, TIN.fullWeb.value * diameter),
  }
}

/** Tin wanted beside what is cut with snips or a chisel, which bend the strip they leave. */
export const webOfCut = (sheet: number): Web => {
  const least = TIN.holeToHole.value * sheet
  const whole = Math.max(least, TIN.snippedWeb.value)
  return { least, poor: whole, full: whole }
}

/** Tin wanted beside an opening of a wall, drilled or cut. */
export const webOfWallHole = (hole: WallHole, sheet: number): Web =>
  hole.shape === 'round' ? webOfHole(hole.diameter, sheet) : webOfCut(sheet)

/** The web between two openings: the one that asks for less decides, for it is drilled into less tin. */
export const lesserWeb = (one: Web, other: Web): Web => ({
  least: Math.max(one.least, other.least),
  poor: Math.min(one.poor, other.poor),
  full: Math.min(one.full, other.full),
})

/** A rounding error must not turn exactly enough into too little [m]. */
export const HAIR = 1e-9

/** How bad it is that only `tin` is left; null where it is enough. */
export const gradeWeb = (tin: number, { least, poor, full }: Web): Finding['severity'] | null =>
  tin < least - HAIR ? 'stop' : tin < poor - HAIR ? 'warn' : tin < full - HAIR ? 'note' : null
