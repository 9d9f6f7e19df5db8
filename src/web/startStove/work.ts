import { type StartBurn, type Started, startStove } from '#compose/startStove.ts'
import { darkTheme, lightTheme } from '#craft/section/theme.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { isWhole } from '#stove/can/ends.ts'
import { fitCans } from '#stove/fit/fit.ts'
import type { Bit, Can, Stove } from '#stove/model.ts'
import type { ShelfCan, StartChoice } from '#stove/start/choice.ts'
import { smallSection } from '../home/smallSection.ts'

/** A picture of a stove cut open, for both looks. */
export interface StartPictures {
  readonly light: string
  readonly dark: string
}

export interface StartShown {
  readonly started: Started
  readonly pictures: StartPictures | null
}

/** A pair of cans of the shelf that makes a stove. */
export interface Possible {
  readonly outer: string
  readonly inner: string
  readonly burn: StartBurn
  readonly warnings: number
  readonly pictures: StartPictures
}

export interface PossibleStarts {
  readonly stoves: readonly Possible[]
  /** Pairs that go into each other, and how many of them were tried. */
  readonly pairs: number
  readonly tried: number
}

const picturesOf = (stove: Stove): StartPictures => {
  const outcome = predictSteady(stove)
  const burn = outcome.ok && outcome.value.kind === 'prediction' ? outcome.value.prediction : null
  return { light: smallSection(stove, burn, lightTheme), dark: smallSection(stove, burn, darkTheme) }
}

export const startShown = (choice: StartChoice): StartShown => {
  const started = startStove(choice)
  return { started, pictures: started.kind === 'started' ? picturesOf(started.start.stove) : null }
}

/** So many pairs are tried: some ten seconds on a slow machine. */
const MOST_PAIRS = 150

const cutOpen = (can: Can): Can =>
  isWhole(can.top) && isWhole(can.bottom) ? { ...can, top: { kind: 'open' } } : can

/** Goes in by its wall, or hangs in by its seam. */
const mayGo = (inner: Can, outer: Can): boolean =>
  outer.bodyDiameter.value - 2 * outer.bodyWall > inner.bodyDiameter.value &&
  fitCans(inner, cutOpen(outer)).kind !== 'does not go'

/** Two cans of one kind stand for each other. */
const kindOf = ({ item }: ShelfCan): string => JSON.stringify(item)

/** Every pair of cans that makes a stove, the best first: clean, then with the fewest warnings, then the strongest. */
export const possibleStarts = (
  cans: readonly ShelfCan[],
  bits: readonly Bit[],
  fuel: string,
  tell: (doing: string, share: number | null) => void,
): PossibleStarts => {
  const seen = new Set<string>()
  const pairs = cans.flatMap((outer) =>
    cans.flatMap((inner) => {
      const key = `${kindOf(outer)} ${kindOf(inner)}`
      if (outer === inner || seen.has(key) || !mayGo(inner.can, outer.can)) return []
      seen.add(key)
      return [{ outer, inner }]
    }),
  )
  const stoves = pairs.slice(0, MOST_PAIRS).flatMap(({ outer, inner }, i): readonly Possible[] => {
    tell(`${inner.name} in ${outer.name}`, i / Math.min(pairs.length, MOST_PAIRS))
    const name = `${outer.name} and ${inner.name}`.slice(0, 80)
    const started = startStove({
      name,
      outer,
      inner,
      potStand: null,
      damper: false,
      vanes: false,
      bits,
      fuel,
      potDiameter: null,
    })
    if (started.kind === 'cannot') return []
    const { burn, findings, start } = started
    return [
      {
        outer: outer.name,
        inner: inner.name,
        burn,
        warnings: findings.filter(({ severity }) => severity === 'warn').length,
        pictures: picturesOf(start.stove),
      },
    ]
  })
  const sorted = stoves.sort(
    (a, b) =>
      Number(b.burn.clean) - Number(a.burn.clean) ||
      a.warnings - b.warnings ||
      (b.burn.firepower ?? 0) - (a.burn.firepower ?? 0) ||
      (a.outer < b.outer ? -1 : 1),
  )
  return { stoves: sorted, pairs: pairs.length, tried: Math.min(pairs.length, MOST_PAIRS) }
}
