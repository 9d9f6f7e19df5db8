import type { Box } from '#craft/box.ts'
import { fontWidth } from './fontMetrics.ts'
import type { Text } from './shapes.ts'

/** Text that stands askew is looked at in pieces of this length [mm]. */
const PIECE = 2

/** The boxes of a line of text by the font's own widths, a hair within its strokes' reach; several where it stands askew. */
export const inkBoxes = ({ text, size, anchor, at, angle }: Text): readonly Box[] => {
  const width = fontWidth(text, size)
  const start = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width
  const [low, high] = [-0.25 * size, 1.05 * size]
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
  const count = angle % 90 === 0 ? 1 : Math.max(1, Math.ceil(width / PIECE))
  return Array.from({ length: count }, (_, index) => {
    const corners = [index / count, (index + 1) / count].flatMap((share) =>
      [low, high].map((up) => {
        const along = start + share * width
        return { x: at.x + along * cos - up * sin, y: at.y + along * sin + up * cos }
      }),
    )
    const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)]
    return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) }
  })
}

/** The one box round a line of text. */
export const inkBox = (text: Text): Box => {
  const boxes = inkBoxes(text)
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    bottom: Math.min(...boxes.map(({ bottom }) => bottom)),
    top: Math.max(...boxes.map(({ top }) => top)),
  }
}
