import { execFileSync } from 'node:child_process'

/**
 * A PDF as MuPDF reads it: `mutool trace` prints every path with its matrix, which has nothing to do with
 * how we wrote them. Everything here is in millimetres from the page's upper left corner.
 */

export interface ReadLine {
  readonly from: ReadPoint
  readonly to: ReadPoint
  readonly pen: number
}

export interface ReadPoint {
  readonly x: number
  readonly y: number
}

/** A closed path of curves, taken by its extent. */
export interface ReadCircle {
  readonly centre: ReadPoint
  readonly diameter: number
  /** How much wider than high it came out. */
  readonly oval: number
  readonly pen: number
  readonly grey: number
}

export interface ReadPage {
  readonly width: number
  readonly height: number
  readonly lines: readonly ReadLine[]
  readonly circles: readonly ReadCircle[]
}

const MM_PER_POINT = 25.4 / 72

const attribute = (tag: string, name: string): string => {
  const found = new RegExp(`\\b${name}="([^"]*)"`).exec(tag)
  if (found?.[1] === undefined) throw new Error(`no ${name} in ${tag}`)
  return found[1]
}

const numbers = (text: string): readonly number[] => text.trim().split(/\s+/).map(Number)

/** Extreme points of a cubic Bézier curve along one axis, ends included (roots of its derivative). */
const extremes = (p0: number, p1: number, p2: number, p3: number): readonly number[] => {
  const at = (t: number): number =>
    (1 - t) ** 3 * p0 + 3 * (1 - t) ** 2 * t * p1 + 3 * (1 - t) * t ** 2 * p2 + t ** 3 * p3
  const [a, b, c] = [-p0 + 3 * p1 - 3 * p2 + p3, 2 * (p0 - 2 * p1 + p2), p1 - p0]
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * c))
  const roots = Math.abs(a) < 1e-12 ? [-c / b] : [(-b + root) / (2 * a), (-b - root) / (2 * a)]
  return [p0, p3, ...roots.filter((t) => t > 0 && t < 1).map(at)]
}

type Step = { readonly kind: 'move' | 'line' | 'curve' | 'close'; readonly points: readonly ReadPoint[] }

const readSteps = (body: string, place: (x: number, y: number) => ReadPoint): readonly Step[] =>
  [...body.matchAll(/<(moveto|lineto|curveto|closepath)\b([^>]*)\/>/g)].map(
    ([, name = '', rest = '']): Step => {
      if (name === 'closepath') return { kind: 'close', points: [] }
      if (name === 'curveto') {
        const points = [1, 2, 3].map((n) =>
          place(Number(attribute(rest, `x${n}`)), Number(attribute(rest, `y${n}`))),
        )
        return { kind: 'curve', points }
      }
      const point = place(Number(attribute(rest, 'x')), Number(attribute(rest, 'y')))
      return { kind: name === 'moveto' ? 'move' : 'line', points: [point] }
    },
  )

const readPath = (tag: string, body: string): { lines: ReadLine[]; circles: ReadCircle[] } => {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = numbers(attribute(tag, 'transform'))
  const place = (x: number, y: number): ReadPoint => ({
    x: (a * x + c * y + e) * MM_PER_POINT,
    y: (b * x + d * y + f) * MM_PER_POINT,
  })
  const pen = Number(attribute(tag, 'linewidth')) * Math.abs(a) * MM_PER_POINT
  const steps = readSteps(body, place)
  const lines: ReadLine[] = []
  const [xs, ys]: [number[], number[]] = [[], []]
  let at: ReadPoint = { x: 0, y: 0 }
  for (const { kind, points } of steps) {
    const end = points.at(-1) ?? at
    if (kind === 'line') lines.push({ from: at, to: end, pen })
    if (kind === 'curve') {
      const [p1 = at, p2 = at] = points
      xs.push(...extremes(at.x, p1.x, p2.x, end.x))
      ys.push(...extremes(at.y, p1.y, p2.y, end.y))
    }
    at = end
  }
  const isCircle = lines.length === 0 && steps.at(-1)?.kind === 'close' && xs.length > 0
  if (!isCircle) return { lines, circles: [] }
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  return {
    lines: [],
    circles: [
      {
        centre: { x: (left + right) / 2, y: (top + bottom) / 2 },
        diameter: (right - left + bottom - top) / 2,
        oval: right - left - (bottom - top),
        pen,
        grey: Number(attribute(tag, 'color')),
      },
    ],
  }
}

/** Reads all pages of a PDF. */
export const readPdf = (path: string): readonly ReadPage[] => {
  const text = execFileSync('mutool', ['trace', path], { encoding: 'utf8', maxBuffer: 1 << 28 })
  return [...text.matchAll(/<page\b([^>]*)>([\s\S]*?)<\/page>/g)].map(
    ([, head = '', body = '']): ReadPage => {
      const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = numbers(attribute(head, 'mediabox'))
      const paths = [...body.matchAll(/<stroke_path\b([^>]*)>([\s\S]*?)<\/stroke_path>/g)].map(
        ([, tag = '', inner = '']) => readPath(tag, inner),
      )
      return {
        width: (x1 - x0) * MM_PER_POINT,
        height: (y1 - y0) * MM_PER_POINT,
        lines: paths.flatMap(({ lines }) => lines),
        circles: paths.flatMap(({ circles }) => circles),
      }
    },
  )
}
