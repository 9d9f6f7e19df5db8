import { readLength } from '#basis/text/length.ts'
import type { Spot } from '#craft/card/board.ts'
import type { Card } from '#craft/card/card.ts'
import { disagreements } from '#craft/page/dualValues.ts'
import type { PixelBox } from '#craft/section/sheet.ts'

const meet = (a: PixelBox, b: PixelBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

/** Whether a straight line runs through a box: clipped against its four sides (Liang and Barsky). */
export const crosses = ([from, to]: readonly [Spot, Spot], box: PixelBox): boolean => {
  let [enter, leave] = [0, 1]
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  for (const [step, room] of [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.top],
    [dy, box.bottom - from.y],
  ] as const) {
    if (step === 0) {
      if (room <= 0) return false
    } else if (step < 0) enter = Math.max(enter, room / step)
    else leave = Math.min(leave, room / step)
  }
  return enter < leave
}

/** The ink of a line is lower than its box: no accents and no descenders where letters nearly touch. */
const ink = ({ left, right, top, bottom }: PixelBox): PixelBox => {
  const em = bottom - top
  return { left: left + 1, right: right - 1, top: top + 0.08 * em, bottom: bottom - 0.04 * em }
}

/** Everything that is wrong with where a card's lettering stands, in words. */
export const layoutFaults = ({ lettered, rules, width, height, title, shape }: Card): readonly string[] => {
  const where = `${title}, ${shape}: `
  const faults: string[] = []
  for (const [i, { text, box }] of lettered.entries()) {
    if (box.left < 20 || box.right > width - 20 || box.top < 20 || box.bottom > height - 4)
      faults.push(`${where}"${text}" leaves the card`)
    for (const other of lettered.slice(i + 1))
      if (meet(ink(box), ink(other.box))) faults.push(`${where}"${text}" meets "${other.text}"`)
    if (rules.some((rule) => crosses(rule, ink(box)))) faults.push(`${where}a line runs through "${text}"`)
  }
  return faults
}

/** Sizes whose halves disagree. Those past 400 mm are out of the cross-check's own range: they are read as a way round a can. */
export const clashes = (text: string): readonly string[] =>
  disagreements(text).filter((pair) => !readLength(pair, 'text', 'circumference').ok)
