import { element } from '../svg/element.ts'
import type { Block, Fact, Field, Picture, Table } from './block.ts'
import { type Canvas, drawBox, drawLine, drawRule, EMBER, INK, MUTED, WASH } from './paint.ts'
import { type PictureSize, pictureSize, withOwnIds } from './pictureSize.ts'
import {
  BODY,
  breakLines,
  FIGURE,
  HEADING,
  SMALL,
  SMALL_STRONG,
  STRONG,
  SUBHEADING,
  type Type,
  widthOf,
} from './type.ts'

/** A stretch of a page that is not cut: a line, a table's row, a picture. Points. */
export interface Strip {
  readonly height: number
  /** White over it, left out at the top of a page. */
  readonly before: number
  /** Stays on the page of what follows. */
  readonly keep: boolean
  /** `x` left edge, `y` top. */
  readonly draw: (canvas: Canvas, x: number, y: number) => void
  /** Drawn again at the top of the page where what it heads goes on. */
  readonly head?: Strip
  /** The same but lower by so many points, where it holds a picture that may give way so far; else null. */
  readonly lower?: (by: number) => Strip | null
}

const lineStrip = (
  text: string,
  type: Type,
  before: number,
  keep: boolean,
  indent = 0,
  ink = INK,
): Strip => ({
  height: type.leading,
  before,
  keep,
  draw: (canvas, x, y) => drawLine(canvas, x + indent, y + type.leading * 0.76, text, { type, ink }),
})

/** Lines of one paragraph: the first two and the last two stay together. */
const paragraph = (
  text: string,
  type: Type,
  width: number,
  before: number,
  ink = INK,
  indent = 0,
): readonly Strip[] => {
  const lines = breakLines(text, type, width - indent)
  return lines.map((line, i) =>
    lineStrip(
      line,
      type,
      i === 0 ? before : 0,
      i === 0 || i === lines.length - 2 ? lines.length > 1 : false,
      indent,
      ink,
    ),
  )
}

const heading = (text: string, type: Type, before: number, width: number): readonly Strip[] =>
  breakLines(text, type, width).map((line, i) => lineStrip(line, type, i === 0 ? before : 0, true))

const BULLET = 12

const list = (items: readonly string[], numbered: boolean, width: number): readonly Strip[] =>
  items.flatMap((item, n) => {
    const mark = numbered ? `${n + 1}` : '•'
    return paragraph(item, BODY, width, n === 0 ? 3 : 2.2, INK, numbered ? 16 : BULLET).map((strip, i) =>
      i > 0
        ? strip
        : {
            ...strip,
            draw: (canvas, x, y) => {
              drawLine(canvas, x + (numbered ? 10 : 2), y + BODY.leading * 0.76, mark, {
                type: numbered ? STRONG : BODY,
                ink: MUTED,
                anchor: numbered ? 'end' : 'start',
              })
              strip.draw(canvas, x, y)
            },
          },
    )
  })

const CELL_GAP = 10
/** A table’s row of three lines and more may stand alone on a page [pt]. */
const TALL_ROW = 36

/** Column widths by what they hold: each at least its widest word, the rest shared by the length of its text. */
const columnWidths = ({ head, rows, widths }: Table, width: number): readonly number[] => {
  const room = width - CELL_GAP * (head.length - 1)
  if (widths !== undefined) {
    const sum = widths.reduce((total, one) => total + one, 0)
    return widths.map((one) => (one / sum) * room)
  }
  const cells = (column: number): readonly string[] => rows.map((row) => row[column] ?? '')
  const natural = head.map((title, column) =>
    Math.max(widthOf(title, SMALL_STRONG), ...cells(column).map((cell) => widthOf(cell, SMALL))),
  )
  const total = natural.reduce((sum, one) => sum + one, 0)
  if (total <= room) return natural.map((one, i) => (i === natural.length - 1 ? one + room - total : one))
  const least = head.map(
    (title, column) =>
      Math.max(
        ...[title, ...cells(column)]
          .flatMap((cell) => cell.split(' '))
          .map((word) => widthOf(word, SMALL_STRONG)),
      ) + 1,
  )
  const spare = room - least.reduce((sum, one) => sum + one, 0)
  const wish = natural.map((one, i) => Math.max(0, one - (least[i] as number)))
  const wished = wish.reduce((sum, one) => sum + one, 0) || 1
  return least.map((one, i) => one + (Math.max(0, spare) * (wish[i] as number)) / wished)
}

const table = (block: Table, width: number): readonly Strip[] => {
  const widths = columnWidths(block, width)
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, one) => sum + one + CELL_GAP, 0))
  const row = (cells: readonly string[], type: Type, ink: string, ruled: number): Strip => {
    const lines = cells.map((cell, i) => breakLines(cell, type, widths[i] as number))
    const height = Math.max(1, ...lines.map(({ length }) => length)) * type.leading + 5
    return {
      height,
      before: 0,
      keep: false,
      draw: (canvas, x, y) => {
        for (const [i, cell] of lines.entries()) {
          const right = block.align?.[i] === 'right'
          const at = x + (lefts[i] as number) + (right ? (widths[i] as number) : 0)
          for (const [k, line] of cell.entries())
            drawLine(canvas, at, y + 2 + type.leading * (k + 0.76), line, {
              type,
              ink,
              anchor: right ? 'end' : 'start',
            })
        }
        drawRule(canvas, x, x + width, y + height, ruled, ruled > 0.6 ? INK : undefined)
      },
    }
  }
  const head: Strip = { ...row(block.head, SMALL_STRONG, MUTED, 0.8), keep: true }
  const titled = block.head.some((title) => title !== '')
  const rows = block.rows.map((cells) => row(cells, SMALL, INK, 0.4))
  const isLow = (index: number): boolean => (rows[index]?.height ?? TALL_ROW) < TALL_ROW
  return [
    ...(titled ? [{ ...head, before: 5 }] : []),
    ...rows.map(
      (strip, i): Strip => ({
        ...strip,
        before: titled || i > 0 ? 0 : 5,
        // Neither a lone first row nor a lone last one, where it is a low one.
        keep: (i === 0 && rows.length > 1 && isLow(0)) || (i === rows.length - 2 && isLow(i + 1)),
        ...(titled ? { head } : {}),
      }),
    ),
  ]
}

const FACT_WIDTH = 118

const facts = (all: readonly Fact[], width: number): readonly Strip[] => {
  const columns = Math.max(1, Math.floor((width + 12) / (FACT_WIDTH + 12)))
  const step = (width + 12) / columns
  const rows = Array.from({ length: Math.ceil(all.length / columns) }, (_, i) =>
    all.slice(i * columns, (i + 1) * columns),
  )
  return rows.map((row, r): Strip => {
    const set = row.map(({ label, value, aside }) => ({
      label: breakLines(label, SMALL, step - 12),
      value: breakLines(value, widthOf(value, FIGURE) <= step - 12 ? FIGURE : SUBHEADING, step - 12),
      type: widthOf(value, FIGURE) <= step - 12 ? FIGURE : SUBHEADING,
      aside: aside === undefined ? [] : breakLines(aside, SMALL, step - 12),
    }))
    const tall = ({ label, value, type, aside }: (typeof set)[number]): number =>
      (label.length + aside.length) * SMALL.leading + value.length * type.leading
    return {
      height: Math.max(...set.map(tall)) + 4,
      before: r === 0 ? 6 : 8,
      keep: false,
      draw: (canvas, x, y) => {
        for (const [i, fact] of set.entries()) {
          let at = y
          const put = (lines: readonly string[], type: Type, ink: string): void => {
            for (const line of lines) {
              drawLine(canvas, x + i * step, at + type.leading * 0.76, line, { type, ink })
              at += type.leading
            }
          }
          put(fact.label, SMALL, MUTED)
          put(fact.value, fact.type, INK)
          put(fact.aside, SMALL, MUTED)
        }
      },
    }
  })
}

/** An SVG inside another, scaled into a box. */
const nested = (svg: string, x: number, y: number, scale: number, prefix: string): string => {
  const own = withOwnIds(svg, prefix)
  const inside = own.slice(own.indexOf('>') + 1, own.lastIndexOf('</svg>'))
  return element(
    'g',
    { transform: `translate(${x.toFixed(3)} ${y.toFixed(3)}) scale(${scale.toFixed(5)})` },
    inside,
  )
}

/** A picture gives up so much of its height to stay on a page, and no more. */
const GIVES_WAY = 0.16

const pictureStrip = (
  block: Picture,
  width: number,
  size: PictureSize,
  height: number,
  tallest: number,
): Strip => ({
  height,
  before: 6,
  keep: block.caption !== undefined,
  draw: (canvas, x, y) => {
    const scale = height / size.height
    const left = x + Math.max(0, (width * block.share - size.width * scale) / 2)
    canvas.marks.push({
      left,
      right: left + size.width * scale,
      top: y,
      bottom: y + height,
      what: block.says,
    })
    canvas.parts.push(nested(block.svg, left, y, scale, `p${canvas.parts.length}`))
  },
  lower: (by) =>
    block.firm === true || height - by < tallest * (1 - GIVES_WAY)
      ? null
      : pictureStrip(block, width, size, height - by, tallest),
})

const picture = (block: Picture, width: number): readonly Strip[] => {
  const size = pictureSize(block.svg)
  const height =
    size.height * Math.min((width * block.share) / size.width, (block.tallest ?? 620) / size.height)
  return [
    pictureStrip(block, width, size, height, height),
    ...(block.caption === undefined ? [] : paragraph(block.caption, SMALL, width, 3, MUTED)),
  ]
}

const CAUTION_PAD = 7

const cautions = (title: string, items: readonly string[], width: number): readonly Strip[] => {
  const inner = width - 2 * CAUTION_PAD - 4
  const lines = items.map((item) => breakLines(item, SMALL, inner - 9))
  const height =
    2 * CAUTION_PAD +
    STRONG.leading +
    lines.reduce((sum, { length }) => sum + length * SMALL.leading + 1.5, 0)
  return [
    {
      height,
      before: 8,
      keep: false,
      draw: (canvas, x, y) => {
        drawBox(canvas, x, y, width, height, WASH)
        drawBox(canvas, x, y, 3, height, EMBER)
        let at = y + CAUTION_PAD
        drawLine(canvas, x + CAUTION_PAD + 4, at + STRONG.leading * 0.76, title, { type: STRONG })
        at += STRONG.leading
        for (const item of lines) {
          for (const [k, line] of item.entries()) {
            if (k === 0)
              drawLine(canvas, x + CAUTION_PAD + 4, at + SMALL.leading * 0.76, '•', {
                type: SMALL,
                ink: EMBER,
              })
            drawLine(canvas, x + CAUTION_PAD + 13, at + SMALL.leading * 0.76, line, { type: SMALL })
            at += SMALL.leading
          }
          at += 1.5
        }
      },
    },
  ]
}

const FIELD_HEIGHT = 23

/** Lines to write on, two abreast. */
const fieldLines = (fields: readonly Field[], width: number): readonly Strip[] => {
  const half = (width - 18) / 2
  const pairs = Array.from({ length: Math.ceil(fields.length / 2) }, (_, i) => fields.slice(2 * i, 2 * i + 2))
  return pairs.map(
    (pair): Strip => ({
      height: FIELD_HEIGHT,
      before: 0,
      keep: false,
      draw: (canvas, x, y) => {
        for (const [i, { label, unit, beside }] of pair.entries()) {
          const left = x + i * (half + 18)
          const base = y + FIELD_HEIGHT - 5
          drawLine(canvas, left, base, label, { type: SMALL })
          const note = [unit, beside === undefined ? '' : `(${beside})`]
            .filter((part) => part !== '')
            .join(' ')
          drawLine(canvas, left + half, base, note, { type: SMALL, ink: MUTED, anchor: 'end' })
          const from = left + widthOf(label, SMALL) + 5
          const to = left + half - (note === '' ? 0 : widthOf(note, SMALL) + 4)
          if (to > from + 12) drawRule(canvas, from, to, base + 2, 0.6, MUTED)
        }
      },
    }),
  )
}

const stackHeight = (strips: readonly Strip[]): number =>
  strips.reduce((sum, { height, before }, i) => sum + height + (i === 0 ? 0 : before), 0)

const drawStack = (strips: readonly Strip[], canvas: Canvas, x: number, y: number): void => {
  let at = y
  for (const [i, strip] of strips.entries()) {
    at += i === 0 ? 0 : strip.before
    strip.draw(canvas, x, at)
    at += strip.height
  }
}

interface Stack {
  readonly strips: readonly Strip[]
  readonly x: number
}

/** A stack with its first picture that gives way so much made lower. */
const lowerStack = ({ strips, x }: Stack, by: number): Stack | null => {
  for (const [i, strip] of strips.entries()) {
    const lower = strip.lower?.(by) ?? null
    if (lower !== null) return { strips: strips.with(i, lower), x }
  }
  return null
}

/** Several stacks as one strip that is not cut. */
const bundled = (stacks: readonly Stack[], before: number): Strip => {
  const height = Math.max(...stacks.map(({ strips }) => stackHeight(strips)))
  return {
    height,
    before,
    keep: false,
    draw: (canvas, x, y) => {
      for (const stack of stacks) drawStack(stack.strips, canvas, x + stack.x, y)
    },
    lower: (by) => {
      const lower = stacks.map((stack) => {
        const over = stackHeight(stack.strips) - (height - by)
        return over <= 0 ? stack : lowerStack(stack, over)
      })
      return lower.some((stack) => stack === null) ? null : bundled(lower as readonly Stack[], before)
    },
  }
}

const GUTTER = 18
/** What goes on a page of Letter paper, margins off; anything taller is cut after all. */
const TALLEST_BUNDLE = 670

/** Blocks one under the other in a column of a width, nothing over the first [pt]. */
export const heightOfBlocks = (blocks: readonly Block[], width: number): number =>
  stackHeight(blocks.flatMap((block) => flow(block, width)))

/** A block in a column of a width, as strips. */
export const flow = (block: Block, width: number): readonly Strip[] => {
  switch (block.kind) {
    case 'heading':
      return heading(block.text, HEADING, 18, width)
    case 'subheading':
      return heading(block.text, SUBHEADING, 11, width)
    case 'text':
      return paragraph(block.text, block.muted ? SMALL : BODY, width, 4, block.muted ? MUTED : INK)
    case 'list':
      return list(block.items, block.numbered ?? false, width)
    case 'table':
      return table(block, width)
    case 'facts':
      return facts(block.facts, width)
    case 'picture':
      return picture(block, width)
    case 'cautions':
      return cautions(block.title, block.items, width)
    case 'fields':
      return fieldLines(block.fields, width)
    case 'beside': {
      const left = (width - GUTTER) * block.share
      const right = width - GUTTER - left
      // With nothing on its left, what stands on the right may go on to the next page.
      if (block.left.length === 0)
        return block.right
          .flatMap((one) => flow(one, right))
          .map((strip, i) => ({
            ...strip,
            keep: strip.keep || i === 0,
            draw: (canvas, x, y) => strip.draw(canvas, x + left + GUTTER, y),
          }))
      return [
        bundled(
          [
            { strips: block.left.flatMap((one) => flow(one, left)), x: 0 },
            { strips: block.right.flatMap((one) => flow(one, right)), x: left + GUTTER },
          ],
          10,
        ),
      ]
    }
    case 'together': {
      const strips = block.blocks.flatMap((one) => flow(one, width))
      return stackHeight(strips) > TALLEST_BUNDLE
        ? strips
        : [bundled([{ strips, x: 0 }], strips[0]?.before ?? 0)]
    }
  }
}
