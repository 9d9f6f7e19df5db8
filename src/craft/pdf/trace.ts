import {
  appendBezierCurve,
  beginText,
  closePath,
  endText,
  lineTo,
  moveTo,
  type PDFOperator as Operator,
  PDFNumber,
  PDFOperator,
  setDashPattern,
  setFillingGrayscaleColor,
  setFontAndSize,
  setLineWidth,
  setStrokingGrayscaleColor,
  setTextMatrix,
  showText,
  stroke,
} from '@cantoo/pdf-lib'
import { round } from '../coordinate.ts'
import { LAYERS, type Layer, type Point, type Shape } from '../drawing.ts'
import { emOf, type Weight, weightOf } from '../lettering/measure.ts'
import { PENS } from '../pen.ts'
import type { Run } from './face.ts'

const to = ({ x, y }: Point): [number, number] => [round(x), round(y)]

/** Longest turn drawn as one Bézier curve [deg]: at 45° its radius is right within 5e-6. */
const LONGEST_TURN = 45

/** An arc as Bézier curves; the handle 4/3 tan(θ/4) makes each meet the circle at its ends and middle. */
const arc = (centre: Point, radius: number, from: number, end: number): Operator[] => {
  const pieces = Math.max(1, Math.ceil((end - from) / LONGEST_TURN - 1e-9))
  const turn = (((end - from) / pieces) * Math.PI) / 180
  const handle = (4 / 3) * Math.tan(turn / 4)
  const at = (angle: number, out: number): [number, number] =>
    to({
      x: centre.x + radius * (Math.cos(angle) - out * Math.sin(angle)),
      y: centre.y + radius * (Math.sin(angle) + out * Math.cos(angle)),
    })
  const start = (from * Math.PI) / 180
  return [
    moveTo(...at(start, 0)),
    ...Array.from({ length: pieces }, (_, index) => {
      const [a, b] = [start + index * turn, start + (index + 1) * turn]
      return appendBezierCurve(...at(a, handle), ...at(b, -handle), ...at(b, 0))
    }),
  ]
}

type LineShape = Exclude<Shape, { kind: 'text' }>

const path = (shape: LineShape): Operator[] => {
  switch (shape.kind) {
    case 'line':
      return [moveTo(...to(shape.from)), lineTo(...to(shape.to))]
    case 'polyline': {
      const [first, ...rest] = shape.points
      if (first === undefined) return []
      return [
        moveTo(...to(first)),
        ...rest.map((point) => lineTo(...to(point))),
        ...(shape.closed ? [closePath()] : []),
      ]
    }
    case 'circle':
      return [...arc(shape.centre, shape.radius, 0, 360), closePath()]
    case 'arc':
      return arc(shape.centre, shape.radius, shape.from, shape.to)
  }
}

/** Chooses the pen of a layer. */
const takePen = (layer: Layer): Operator[] => {
  const { width, grey, dash } = PENS[layer]
  return [
    setLineWidth(width),
    setStrokingGrayscaleColor(grey),
    setDashPattern([...dash], 0),
    // Butt ends and sharp corners keep line ends where they were measured.
    PDFOperator.of('J' as never, [PDFNumber.of(0)]),
    PDFOperator.of('j' as never, [PDFNumber.of(0)]),
  ]
}

/** Sets text for the writer: the runs it consists of, and the name the page knows a run's font by. */
export interface Typesetter {
  readonly runs: (text: string, weight: Weight) => readonly Run[]
  readonly fontKey: (run: Run) => string
}

const lettering = (shape: Extract<Shape, { kind: 'text' }>, setter: Typesetter): Operator[] => {
  const em = emOf(shape.size)
  const runs = setter.runs(shape.text, weightOf(shape.size))
  const width = runs.reduce((sum, run) => sum + run.width * em, 0)
  let along = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width
  const angle = (shape.angle * Math.PI) / 180
  const [cos, sin] = [round(Math.cos(angle)), round(Math.sin(angle))]
  return [
    setFillingGrayscaleColor(PENS[shape.layer].grey),
    beginText(),
    ...runs.flatMap((run) => {
      const x = round(shape.at.x + along * Math.cos(angle))
      const y = round(shape.at.y + along * Math.sin(angle))
      along += run.width * em
      return [
        setFontAndSize(setter.fontKey(run), round(em)),
        setTextMatrix(cos, sin, -sin, cos, x, y),
        showText(run.codes),
      ]
    }),
    endText(),
  ]
}

/** Shapes as page operators in millimetres, layer by layer. */
export const trace = (shapes: readonly Shape[], setter: Typesetter): Operator[] =>
  LAYERS.flatMap((layer) => {
    const lines = shapes.filter((shape): shape is LineShape => shape.layer === layer && shape.kind !== 'text')
    const texts = shapes.flatMap((shape) => (shape.layer === layer && shape.kind === 'text' ? [shape] : []))
    return [
      ...(lines.length > 0 ? takePen(layer) : []),
      ...lines.flatMap((shape) => [...path(shape), stroke()]),
      ...texts.flatMap((shape) => lettering(shape, setter)),
    ]
  })
