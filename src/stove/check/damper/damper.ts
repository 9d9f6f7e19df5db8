import { long, onRule, onRuleAtLeast, onRuleAtMost } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { wallZones } from '#stove/can/zones.ts'
import type { BandPart, Finding, RowOpening } from '#stove/model.ts'
import { closestPitch, drilledCount, wallHoleSize } from '#stove/opening/row.ts'
import { type Check, type CheckContext, circumferenceOf, isCan, placedNamed } from '../context.ts'
import { note, warn } from '../finding.ts'
import { called, heightOnWall, level, openingsOf, openingWord, percent, plural } from '../phrase.ts'
import { DAMPER } from '../rules.ts'
import { type Damper, damperRange, windowsOf } from './damperCover.ts'

interface CoveredRow {
  readonly name: string
  readonly row: RowOpening
  /** Lowest and highest edge above the band's lower edge [m]. */
  readonly low: number
  readonly high: number
}

const dampersOf = (context: CheckContext): readonly Damper[] =>
  context.placed.flatMap((band) => {
    const can = placedNamed(context, band.placement.host)
    return band.part.form === 'band' && can !== null && isCan(can)
      ? [{ band: band as PlacedPart & { readonly part: BandPart }, can, circumference: circumferenceOf(can) }]
      : []
  })

/** Rows of the can that the band reaches over. */
const coveredRows = ({ band, can }: Damper): readonly CoveredRow[] =>
  [...can.part.openings].flatMap(([name, row]) => {
    if (row.kind !== 'row') return []
    const half = wallHoleSize(row.hole).axial / 2
    const middle = can.base + row.height - band.base
    const covered = { name, row, low: middle - half, high: middle + half }
    return covered.low < band.part.height && covered.high > 0 ? [covered] : []
  })

/** Whether the band is high enough for the row and lies over it. */
const overlapOf = ({ band, can }: Damper, { name, row, low, high }: CoveredRow): readonly Finding[] => {
  const lap = DAMPER.lap.value
  const below = Math.max(0, lap - low)
  const above = Math.max(0, high + lap - band.part.height)
  if (below <= 1e-9 && above <= 1e-9) return []
  const needed = high - low + 2 * lap
  const middle = (low + high) / 2
  const raise = middle - band.part.height / 2
  const shift = `${raise < 0 ? 'lower' : 'raise'} it by ${onRule(Math.abs(raise))}`
  const missing = low < 0 || high > band.part.height ? 'does not cover' : 'barely covers'
  return [
    warn(
      'damper.not-over-row',
      { part: band.name },
      `The band ${called(band.name)}, ${long(band.part.height)} high, ${missing} the whole height of ${called(name)} on ${called(can.name)}: the row reaches from ${level(low)} to ${level(high)} the band’s lower edge.`,
      band.part.height >= needed - 1e-9
        ? `To bring it middle over the row, ${shift}.`
        : `Make the band at least ${onRuleAtLeast(needed)} high and bring it middle over the ${plural(drilledCount(row), openingWord(row))}.`,
    ),
  ]
}

const windowAdvice = (damper: Damper, { row, low, high }: CoveredRow): string => {
  const [window] = windowsOf(damper)
  const middle = heightOnWall(window ?? {}, (low + high) / 2, damper.band.part.height)
  const size = wallHoleSize(row.hole)
  return `Cut ${plural(row.count, 'window')} at least ${onRuleAtLeast(size.round)} wide and ${onRuleAtLeast(size.axial)} high, one for each position of the row, their middle ${middle} of the band.`
}

/** Why the windows do not open the row, as far as one fact tells. */
const mismatch = (damper: Damper, { row, low, high }: CoveredRow): string => {
  const windows = windowsOf(damper)
  const [window] = windows
  if (window === undefined) return 'it has no windows'
  const cut = windows.reduce((sum, one) => sum + drilledCount(one), 0)
  if (cut !== drilledCount(row) && windows.length === 1)
    return `it has ${plural(cut, 'window')} and the row ${plural(drilledCount(row), openingWord(row))}`
  const [size, hole] = [wallHoleSize(window.hole), wallHoleSize(row.hole)]
  if (size.round < hole.round || size.axial < hole.axial)
    return `its windows of ${long(size.round)} by ${long(size.axial)} are smaller than the ${openingWord(row)}s`
  const off = (low + high) / 2 - window.height
  if (Math.abs(off) > (size.axial - hole.axial) / 2)
    return `its windows lie ${long(Math.abs(off))} too ${off > 0 ? 'low' : 'high'}`
  return 'its windows do not stand over the holes all at once'
}

/** Whether turning the band opens and shuts a row; a question only where it lies over the whole row. */
const opening = (damper: Damper, covered: CoveredRow): readonly Finding[] => {
  const { band, can } = damper
  if (covered.low < 0 || covered.high > band.part.height) return []
  const { most, least, asDrawn, turnToOpen } = damperRange(damper, covered.row)
  const where = { part: band.name }
  const row = `${called(covered.name)} on ${called(can.name)}`
  if (most < DAMPER.fullyOpen.value)
    return [
      warn(
        'damper.cannot-open',
        where,
        `Fully open, the band ${called(band.name)} leaves ${percent(most)} of ${row} free: ${mismatch(damper, covered)}.`,
        windowAdvice(damper, covered),
      ),
    ]
  const shut: Finding[] = []
  if (least > DAMPER.closed.value) {
    const pitch = closestPitch(covered.row, damper.circumference as Metres)
    const widest = pitch - wallHoleSize(covered.row.hole).round - 2 * DAMPER.lap.value
    shut.push(
      warn(
        'damper.cannot-close',
        where,
        `Turned as far shut as it goes, the band ${called(band.name)} still leaves ${percent(least)} of ${row} free: the tin between its windows is narrower than the ${openingWord(covered.row)}s.`,
        widest >= wallHoleSize(covered.row.hole).round
          ? `Make the windows at most ${onRuleAtMost(widest)} wide.`
          : `Use fewer or smaller ${openingWord(covered.row)}s: between two of them there has to be room for one more.`,
      ),
    )
  }
  if (asDrawn < DAMPER.fullyOpen.value * most)
    shut.push(
      note(
        'damper.drawn-partly-shut',
        where,
        `As it is placed, the band ${called(band.name)} leaves ${percent(asDrawn)} of ${row} free.`,
        `Turn it ${Math.round(Math.abs(turnToOpen))}° ${turnToOpen > 0 ? 'clockwise' : 'anticlockwise'} to open it.`,
      ),
    )
  return shut
}

/** A row of another kind that the band hides. */
const hidden = (damper: Damper, covered: CoveredRow): readonly Finding[] => {
  const { asDrawn } = damperRange(damper, covered.row)
  if (asDrawn >= DAMPER.fullyOpen.value) return []
  return [
    warn(
      'damper.hides-row',
      { part: damper.band.name },
      `The band ${called(damper.band.name)} also lies over ${called(covered.name)}, the ${openingsOf(covered.row)} called ${covered.row.duty}, and leaves ${percent(asDrawn)} of their area free.`,
      'Make the band narrower, move it, or give it windows for that row too.',
    ),
  ]
}

/** Seams and beads under the band keep it from lying flat and from turning. */
const bedding = ({ band, can }: Damper): readonly Finding[] => {
  const from = band.base - can.base
  const zones = wallZones(can.part.can).filter(
    ({ why, from: low, to }) => why !== 'edge' && low < from + band.part.height - 1e-9 && to > from + 1e-9,
  )
  const [zone] = zones
  if (zone === undefined) return []
  return [
    warn(
      'damper.on-ridge',
      { part: band.name },
      `The band ${called(band.name)} lies over a ${zone.why} of ${called(can.name)}, ${long(zone.from)} to ${long(zone.to)} above its bottom edge: it neither seals nor turns there.`,
      'Make the band narrower or move it to plain wall.',
    ),
  ]
}

/** Damper bands: over the intake, able to open it all, able to shut it, and free to turn. */
export const damper: Check = (context) =>
  dampersOf(context).flatMap((found) => {
    const rows = coveredRows(found)
    const intakes = rows.filter(({ row }) => row.duty === 'intake')
    const none =
      intakes.length > 0
        ? []
        : [
            warn(
              'damper.no-intake',
              { part: found.band.name },
              `The band ${called(found.band.name)} does not lie over any intake row of ${called(found.can.name)}.`,
              'Move it over the intake, or call the row under it intake.',
            ),
          ]
    return [
      ...none,
      ...intakes.flatMap((covered) => [...overlapOf(found, covered), ...opening(found, covered)]),
      ...rows.filter(({ row }) => row.duty !== 'intake').flatMap((covered) => hidden(found, covered)),
      ...bedding(found),
    ]
  })
