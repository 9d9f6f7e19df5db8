import { type Lettering, letteringBox, type PixelBox, SMALL_SIZE } from '../section/sheet.ts'
import type { Panel, Pixel } from './panel.ts'
import type { PotCurve } from './potCurve.ts'

/** Room between a label and its own line [px]. */
const ASIDE = 7
/** Heights to try for a label beside a rising line, as shares of the panel from its top. */
const HEIGHTS = [0.16, 0.3, 0.45, 0.6, 0.75] as const
/** Where along a line to try one over or under it, as shares of its way. */
const PLACES = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4] as const
/** From the middle of the letters down to their base line [em]. */
const HALF = 0.34

const potName = (litres: number): string => `${litres}\u00a0L`

const lettering = (
  { litres }: PotCurve,
  given: Pick<Lettering, 'x' | 'y' | 'text' | 'anchor'> & Partial<Lettering>,
): Lettering => ({
  size: SMALL_SIZE,
  weight: litres === 1 ? 'semibold' : 'regular',
  ink: 'ink',
  ...given,
})

/** Where a line passes a height for the first time, or null [px]. */
const crossing = ({ points }: PotCurve, y: number): number | null => {
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Pixel, points[i] as Pixel]
    if (a.y >= y && b.y < y) return a.x + ((b.x - a.x) * (a.y - y)) / (a.y - b.y)
  }
  return null
}

/** Height of a line at a place, or null where it does not reach [px]. */
const heightAt = ({ points }: PotCurve, x: number): number | null => {
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Pixel, points[i] as Pixel]
    if (x >= a.x && x <= b.x) return b.x > a.x ? a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x) : b.y
  }
  return null
}

/** To the right or the left of the line as it rises. */
const beside = (curve: PotCurve, { top, bottom }: Panel): readonly Lettering[] =>
  HEIGHTS.flatMap((share) => {
    const y = top + share * (bottom - top)
    // The line leans: its letters keep clear of it at their top and at their foot.
    const [over, under] = [crossing(curve, y - SMALL_SIZE * 0.6), crossing(curve, y + SMALL_SIZE * 0.4)]
    if (over === null || under === null) return []
    const at = { text: potName(curve.litres), y: y + SMALL_SIZE * HALF }
    return [
      lettering(curve, { ...at, x: over + ASIDE, anchor: 'start' }),
      lettering(curve, { ...at, x: under - ASIDE, anchor: 'end' }),
    ]
  })

/** Over or under the line where it is flat, with the warmest it gets. */
const along = (curve: PotCurve, { right }: Panel): readonly Lettering[] => {
  const first = curve.points[0] as Pixel
  const last = curve.points[curve.points.length - 1] as Pixel
  const text = `${potName(curve.litres)}, ${curve.warmest} at most`
  return PLACES.flatMap((share) => {
    const x = Math.min(right - 4, first.x + share * (last.x - first.x))
    const y = heightAt(curve, x)
    return y === null
      ? []
      : [1, 2, 3].flatMap((times) => [
          lettering(curve, { text, x, y: y - times * ASIDE, anchor: 'end' }),
          lettering(curve, { text, x, y: y + times * ASIDE + SMALL_SIZE * 0.8, anchor: 'end' }),
        ])
  })
}

const dryPlaces = (curve: PotCurve): readonly Lettering[] => {
  const { dry, litres } = curve
  if (dry === null) return []
  return [19, 36].flatMap((down) =>
    (['start', 'end'] as const).map((anchor) =>
      lettering(curve, {
        text: `${potName(litres)} boils dry`,
        x: dry.x,
        y: dry.y + down,
        anchor,
        weight: 'regular',
        ink: 'muted',
      }),
    ),
  )
}

const meet = (a: PixelBox, b: PixelBox): boolean =>
  a.left < b.right + ASIDE && b.left < a.right + ASIDE && a.top < b.bottom && b.top < a.bottom

/** Does a line pass through a box? Steps are short beside a letter: their ends and middles tell. */
const passes = ({ points }: PotCurve, box: PixelBox): boolean => {
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Pixel, points[i] as Pixel]
    const pieces = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 3))
    for (let k = 0; k <= pieces; k++) {
      const x = a.x + ((b.x - a.x) * k) / pieces
      const y = a.y + ((b.y - a.y) * k) / pieces
      if (x >= box.left && x <= box.right && y >= box.top && y <= box.bottom) return true
    }
  }
  return false
}

/**
 * The name of every pot, and where it boils dry: at the first place where no line and no other label is in the way, off the
 * marks of events where it can be; a label that finds none is left out.
 */
export const potLabels = (
  curves: readonly PotCurve[],
  panel: Panel,
  marks: readonly number[],
): readonly Lettering[] => {
  const labels: Lettering[] = []
  const clear = (label: Lettering): boolean => {
    const box = letteringBox(label)
    return (
      box.left >= panel.left &&
      box.right <= panel.right + 2 &&
      box.bottom <= panel.bottom &&
      !curves.some((curve) => passes(curve, box)) &&
      !labels.some((other) => meet(box, letteringBox(other)))
    )
  }
  const offMarks = (label: Lettering): boolean => {
    const { left, right } = letteringBox(label)
    return !marks.some((x) => x > left && x < right)
  }
  const letter = (places: readonly Lettering[]): void => {
    const free = places.filter(clear)
    // A mark behind a label is better than no label.
    const found = free.find(offMarks) ?? free[0]
    if (found !== undefined) labels.push(found)
  }
  const drawn = curves.filter(({ points }) => points.length > 1)
  for (const curve of drawn) letter(dryPlaces(curve))
  for (const curve of drawn) letter(curve.boil === null ? along(curve, panel) : beside(curve, panel))
  return labels
}
