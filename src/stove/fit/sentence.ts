import { long, span } from '#basis/text/bothUnits.ts'
import type { Clearance, Fit, FitKind } from './fitKind.ts'
import type { Mating } from './mating.ts'

const roomText = ({ least, most }: Clearance): string =>
  least >= 0
    ? `${span(least, most)} of play on the diameter`
    : `anything from ${long(-least)} too wide to ${long(most)} of play on the diameter`

const excessText = ({ least, most }: Clearance, opening = 'the opening'): string =>
  most <= 0
    ? `${span(-most, -least)} wider than ${opening}`
    : `anything from ${long(-least)} wider to ${long(most)} narrower than ${opening}`

/** After "it may also". */
const also: Readonly<Record<FitKind, string>> = {
  'drops in': 'drop in',
  'slides in': 'slide in with little play',
  'snaps on the lip': 'need snapping past the lip',
  'sits on the rim': 'sit on the rim',
  'goes over the outside': 'go over the outside',
  'does not go': 'not go',
}

const turnedOver = (fit: Omit<Fit, 'sentence'>): string =>
  fit.through === 'bottom' ? ' through its bottom end' : ''

const mainSentence = (fit: Omit<Fit, 'sentence'>, inner: Mating, outer: Mating, over: boolean): string => {
  const { clearance } = fit
  const first = inner.name
  const second = outer.name
  switch (fit.kind) {
    case 'drops in':
      return `${first} drops into ${second}${turnedOver(fit)}${clearance === null ? '' : ` with ${roomText(clearance)}`}`
    case 'slides in':
      return `${first} slides into ${second}${turnedOver(fit)}${clearance === null ? '' : ` with ${roomText(clearance)}`}`
    case 'goes over the outside':
      return `${first} goes over the outside of ${second}${clearance === null ? '' : ` with ${roomText(clearance)}`}`
    case 'snaps on the lip': {
      const [lipped, opened] = over ? [second, first] : [first, second]
      const how =
        clearance === null
          ? ''
          : `: the seam of ${lipped} is ${excessText(clearance, `the opening of ${opened}`)}, which tin of this size gives`
      return over
        ? `${first} snaps over ${second}${how}`
        : `${first} snaps into ${second}${turnedOver(fit)}${how}`
    }
    case 'sits on the rim': {
      if (clearance === null) return `${first} sits on the closed end of ${second}`
      const hangs =
        inner.canHang &&
        inner.bodyUnderLip !== null &&
        inner.widest !== null &&
        inner.bodyUnderLip.value <= inner.widest.value + clearance.nominal
      return hangs
        ? `${first} hangs in ${second} by its seam, which is ${excessText(clearance)}`
        : `${first} sits on the rim of ${second}: it is ${excessText(clearance)}`
    }
    case 'does not go':
      return clearance === null
        ? `${first} does not go into ${second}, which is closed: cut an end out first`
        : `${first} does not go with ${second}: bare edge meets bare edge, ${excessText(clearance)}; flare one of them or cut it down`
  }
}

/** What a fit means, said for people. */
export const fitSentence = (
  fit: Omit<Fit, 'sentence'>,
  inner: Mating,
  outer: Mating,
  over: boolean,
): string => {
  const main = mainSentence(fit, inner, outer, over)
  const others = [...new Set([fit.atTightest, fit.atLoosest])].filter((kind) => kind !== fit.kind)
  if (fit.certain || others.length === 0) return `${main}.`
  const maybe = others.map((kind) => also[kind]).join(', or ')
  return `${main}; as loosely as the two are measured it may also ${maybe}. Measure both to be sure.`
}
