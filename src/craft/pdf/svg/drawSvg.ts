import {
  appendBezierCurve,
  beginText,
  clip,
  closePath,
  concatTransformationMatrix,
  endPath,
  endText,
  fill,
  fillAndStroke,
  fillEvenOdd,
  lineTo,
  moveTo,
  PDFName,
  PDFNumber,
  PDFOperator,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  setDashPattern,
  setFillingRgbColor,
  setFontAndSize,
  setGraphicsState,
  setLineWidth,
  setStrokingRgbColor,
  setTextMatrix,
  showText,
  stroke,
} from '@cantoo/pdf-lib'
import { round } from '../../coordinate.ts'
import { readPathData, type Segment } from '../../svg/pathData.ts'
import type { SvgNode } from '../../svg/read.ts'
import type { Typesetter } from '../trace.ts'
import { type Colour, readColour } from './paint.ts'
import { initialStyle, type Style, styleWithin } from './style.ts'
import { readTransform } from './transform.ts'

/** Colour along a line from one point to another. */
export interface LinearGradient {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  readonly stops: readonly (readonly [offset: number, colour: Colour])[]
}

/** What a page lends to the pictures on it. */
export interface PictureTools extends Typesetter {
  /** Name the page knows a graphics state of this opacity by. */
  readonly opacityKey: (fill: number, stroke: number) => string
  /** Name the page knows a shading by. */
  readonly shadingKey: (gradient: LinearGradient) => string
}

type Attributes = ReadonlyMap<string, string>

const number = (attributes: Attributes, key: string, otherwise = 0): number => {
  const text = attributes.get(key)
  if (text === undefined) return otherwise
  const value = Number(text)
  if (Number.isNaN(value)) throw new SyntaxError(`${key}="${text}" is no number`)
  return value
}

/** A quarter of a circle as one cubic curve: 4/3 tan(π/8). */
const QUARTER = 0.5522847498307936

const ellipse = (cx: number, cy: number, rx: number, ry: number): readonly Segment[] => {
  const [hx, hy] = [rx * QUARTER, ry * QUARTER]
  return [
    ['M', cx + rx, cy],
    ['C', cx + rx, cy + hy, cx + hx, cy + ry, cx, cy + ry],
    ['C', cx - hx, cy + ry, cx - rx, cy + hy, cx - rx, cy],
    ['C', cx - rx, cy - hy, cx - hx, cy - ry, cx, cy - ry],
    ['C', cx + hx, cy - ry, cx + rx, cy - hy, cx + rx, cy],
    ['Z'],
  ]
}

const roundedRectangle = (x: number, y: number, w: number, h: number, r: number): readonly Segment[] => {
  const k = r * (1 - QUARTER)
  return [
    ['M', x + r, y],
    ['L', x + w - r, y],
    ['C', x + w - k, y, x + w, y + k, x + w, y + r],
    ['L', x + w, y + h - r],
    ['C', x + w, y + h - k, x + w - k, y + h, x + w - r, y + h],
    ['L', x + r, y + h],
    ['C', x + k, y + h, x, y + h - k, x, y + h - r],
    ['L', x, y + r],
    ['C', x, y + k, x + k, y, x + r, y],
    ['Z'],
  ]
}

/** Outline of an element that has one; null for the others. */
const outlineOf = ({ name, attributes }: SvgNode): readonly Segment[] | null => {
  const n = (key: string, otherwise?: number): number => number(attributes, key, otherwise)
  switch (name) {
    case 'path':
      return readPathData(attributes.get('d') ?? '')
    case 'rect': {
      const r = Math.min(n('rx', n('ry')), n('width') / 2, n('height') / 2)
      if (r > 0) return roundedRectangle(n('x'), n('y'), n('width'), n('height'), r)
      const [x, y, w, h] = [n('x'), n('y'), n('width'), n('height')]
      return [['M', x, y], ['L', x + w, y], ['L', x + w, y + h], ['L', x, y + h], ['Z']]
    }
    case 'circle':
      return ellipse(n('cx'), n('cy'), n('r'), n('r'))
    case 'ellipse':
      return ellipse(n('cx'), n('cy'), n('rx'), n('ry'))
    case 'line':
      return [
        ['M', n('x1'), n('y1')],
        ['L', n('x2'), n('y2')],
      ]
    case 'polyline':
    case 'polygon': {
      const numbers = (attributes.get('points') ?? '')
        .trim()
        .split(/[\s,]+/)
        .map(Number)
      const points = Array.from(
        { length: Math.floor(numbers.length / 2) },
        (_, i): Segment => [i === 0 ? 'M' : 'L', numbers[2 * i] as number, numbers[2 * i + 1] as number],
      )
      return name === 'polygon' ? [...points, ['Z']] : points
    }
    default:
      return null
  }
}

const segmentOperator = (segment: Segment): PDFOperator => {
  switch (segment[0]) {
    case 'M':
      return moveTo(round(segment[1]), round(segment[2]))
    case 'L':
      return lineTo(round(segment[1]), round(segment[2]))
    case 'C': {
      const [, x1, y1, x2, y2, x, y] = segment
      return appendBezierCurve(round(x1), round(y1), round(x2), round(y2), round(x), round(y))
    }
    case 'Z':
      return closePath()
  }
}

const pathOperators = (segments: readonly Segment[]): PDFOperator[] => segments.map(segmentOperator)

const operator = (name: string, ...operands: readonly (PDFNumber | PDFName)[]): PDFOperator =>
  PDFOperator.of(name as never, [...operands])

const saved = (inside: readonly PDFOperator[]): PDFOperator[] =>
  inside.length === 0 ? [] : [pushGraphicsState(), ...inside, popGraphicsState()]

const boxOf = (segments: readonly Segment[]): readonly [number, number, number, number] => {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const segment of segments)
    for (let i = 1; i < segment.length; i += 2) {
      const [x, y] = [segment[i] as number, segment[i + 1] as number]
      left = Math.min(left, x)
      right = Math.max(right, x)
      top = Math.min(top, y)
      bottom = Math.max(bottom, y)
    }
  return [left, top, right, bottom]
}

const gradientOf = (node: SvgNode, segments: readonly Segment[]): LinearGradient => {
  const { attributes } = node
  const fraction = (key: string, otherwise: number): number => number(attributes, key, otherwise)
  const stops = node.children.flatMap((child): LinearGradient['stops'] =>
    typeof child === 'string'
      ? []
      : [[number(child.attributes, 'offset'), readColour(child.attributes.get('stop-color') ?? '#000')]],
  )
  const line = [fraction('x1', 0), fraction('y1', 0), fraction('x2', 1), fraction('y2', 0)] as const
  if (attributes.get('gradientUnits') === 'userSpaceOnUse')
    return { from: [line[0], line[1]], to: [line[2], line[3]], stops }
  const [left, top, right, bottom] = boxOf(segments)
  const at = (x: number, y: number): readonly [number, number] => [
    left + x * (right - left),
    top + y * (bottom - top),
  ]
  return { from: at(line[0], line[1]), to: at(line[2], line[3]), stops }
}

/** Every element with an id. */
const byId = (root: SvgNode): ReadonlyMap<string, SvgNode> => {
  const found = new Map<string, SvgNode>()
  const visit = (node: SvgNode): void => {
    const id = node.attributes.get('id')
    if (id !== undefined) found.set(id, node)
    for (const child of node.children) if (typeof child !== 'string') visit(child)
  }
  visit(root)
  return found
}

/** One line of text as it will be set, from its element and the spans in it. */
interface Run {
  readonly text: string
  readonly style: Style
  readonly dx: number
}

const runsIn = (node: SvgNode, style: Style): readonly Run[] =>
  node.children.flatMap((child): readonly Run[] =>
    typeof child === 'string'
      ? [{ text: child, style, dx: 0 }]
      : runsIn(child, styleWithin(style, child.attributes)).map((run, i) => ({
          ...run,
          dx: run.dx + (i === 0 ? number(child.attributes, 'dx') : 0),
        })),
  )

/** Texts of a picture by weight, for the fonts of a document. */
export const textsOfSvg = (root: SvgNode): readonly (readonly [text: string, bold: boolean])[] => {
  const visit = (node: SvgNode, around: Style): readonly (readonly [string, boolean])[] => {
    if (node.name === 'title' || node.name === 'desc') return []
    const style = styleWithin(around, node.attributes)
    if (node.name === 'text') return runsIn(node, style).map(({ text, style: { bold } }) => [text, bold])
    return node.children.flatMap((child) => (typeof child === 'string' ? [] : visit(child, style)))
  }
  return visit(root, initialStyle)
}

const weightOf = ({ bold }: Style): 'regular' | 'semibold' => (bold ? 'semibold' : 'regular')

const SILENT = new Set(['title', 'desc', 'defs', 'linearGradient', 'clipPath', 'style'])

/**
 * Draws an SVG of this house as page operators, in its own units with y down: the caller sets the scale and the
 * flip. Lines, fills, gradients, clips, mirrored copies, opacity and lettering come out as vectors and text.
 * Throws `SyntaxError` for an element it does not know, so that nothing is left out unsaid.
 */
export const drawSvg = (root: SvgNode, tools: PictureTools): readonly PDFOperator[] => {
  const named = byId(root)
  const find = (id: string): SvgNode => {
    const node = named.get(id)
    if (node === undefined) throw new SyntaxError(`The picture has no element “${id}”`)
    return node
  }

  const strokePen = (style: Style): PDFOperator[] =>
    style.stroke.kind === 'colour'
      ? [
          setStrokingRgbColor(...style.stroke.colour.rgb),
          setLineWidth(round(style.strokeWidth)),
          operator('J', PDFNumber.of(style.lineCap)),
          operator('j', PDFNumber.of(style.lineJoin)),
          setDashPattern([...style.dashes], 0),
        ]
      : []

  const opacity = (style: Style): PDFOperator[] => {
    const alpha = (paint: Style['fill'], own: number): number =>
      style.opacity * own * (paint.kind === 'colour' ? paint.colour.alpha : 1)
    const [filled, stroked] = [alpha(style.fill, style.fillOpacity), alpha(style.stroke, style.strokeOpacity)]
    return filled >= 1 && stroked >= 1 ? [] : [setGraphicsState(tools.opacityKey(filled, stroked))]
  }

  const paintOutline = (segments: readonly Segment[], style: Style): PDFOperator[] => {
    const outline = pathOperators(segments)
    if (outline.length === 0) return []
    const strokes = style.stroke.kind === 'colour' && style.strokeWidth > 0
    const out: PDFOperator[] = [...opacity(style), ...(strokes ? strokePen(style) : [])]
    const evenOdd = style.fillRule === 'evenodd'
    if (style.fill.kind === 'reference') {
      const key = tools.shadingKey(gradientOf(find(style.fill.id), segments))
      const clipped = [
        ...outline,
        evenOdd ? operator('W*') : clip(),
        endPath(),
        operator('sh', PDFName.of(key)),
      ]
      return saved([...out, ...saved(clipped), ...(strokes ? [...outline, stroke()] : [])])
    }
    const fills = style.fill.kind === 'colour'
    if (fills && style.fill.kind === 'colour') out.push(setFillingRgbColor(...style.fill.colour.rgb))
    if (!fills && !strokes) return []
    const end = fills
      ? strokes
        ? evenOdd
          ? operator('B*')
          : fillAndStroke()
        : evenOdd
          ? fillEvenOdd()
          : fill()
      : stroke()
    return saved([...out, ...outline, end])
  }

  const letter = (node: SvgNode, style: Style): PDFOperator[] => {
    const runs = runsIn(node, style).map((run) => {
      const cuts = tools.runs(run.text, weightOf(run.style))
      return { ...run, cuts, width: cuts.reduce((sum, { width }) => sum + width, 0) * run.style.fontSize }
    })
    const width = runs.reduce((sum, run) => sum + run.dx + run.width, 0)
    const x0 = number(node.attributes, 'x')
    const y = number(node.attributes, 'y')
    const shift = style.anchor === 'start' ? 0 : style.anchor === 'middle' ? width / 2 : width
    const set = (mode: number): PDFOperator[] => {
      let x = x0 - shift
      return [
        beginText(),
        operator('Tr', PDFNumber.of(mode)),
        ...runs.flatMap((run) => {
          x += run.dx
          const colour =
            run.style.fill.kind === 'colour' ? [setFillingRgbColor(...run.style.fill.colour.rgb)] : []
          return [
            ...colour,
            ...run.cuts.flatMap((cut) => {
              const placed = [
                setFontAndSize(tools.fontKey(cut), round(run.style.fontSize)),
                // Pictures have y down; letters stand up.
                setTextMatrix(1, 0, 0, -1, round(x), round(y)),
                showText(cut.codes),
              ]
              x += cut.width * run.style.fontSize
              return placed
            }),
          ]
        }),
        endText(),
      ]
    }
    const haloed = style.strokeFirst && style.stroke.kind === 'colour' && style.strokeWidth > 0
    return saved([...opacity(style), ...(haloed ? [...strokePen(style), ...set(1)] : []), ...set(0)])
  }

  const clipTo = (attributes: Attributes): PDFOperator[] => {
    const reference = /^url\(#(.+)\)$/.exec(attributes.get('clip-path') ?? '')
    if (reference === null) return []
    const outline = find(reference[1] as string).children.flatMap((child) =>
      typeof child === 'string' ? [] : (outlineOf(child) ?? []),
    )
    return [...pathOperators(outline), clip(), endPath()]
  }

  const visit = (node: SvgNode, around: Style): PDFOperator[] => {
    if (SILENT.has(node.name)) return []
    const style = styleWithin(around, node.attributes)
    const matrices = readTransform(node.attributes.get('transform') ?? '')
    const clipping = clipTo(node.attributes)
    const inside = (): PDFOperator[] => {
      switch (node.name) {
        case 'svg':
        case 'g':
          return node.children.flatMap((child) => (typeof child === 'string' ? [] : visit(child, style)))
        case 'use':
          return visit(find((node.attributes.get('href') ?? '').slice(1)), style)
        case 'text':
          return letter(node, style)
        default: {
          const outline = outlineOf(node)
          if (outline === null) throw new SyntaxError(`A picture of ours has no <${node.name}>`)
          return paintOutline(outline, style)
        }
      }
    }
    if (matrices.length === 0 && clipping.length === 0) return inside()
    return saved([
      ...matrices.map((m) =>
        concatTransformationMatrix(...(m.map(round) as [number, number, number, number, number, number])),
      ),
      ...clipping,
      ...inside(),
    ])
  }

  const [left, top, width, height] = (root.attributes.get('viewBox') ?? '0 0 0 0').split(/\s+/).map(Number)
  return saved([
    rectangle(round(left as number), round(top as number), round(width as number), round(height as number)),
    clip(),
    endPath(),
    ...visit(root, initialStyle),
  ])
}
