import { round } from '../coordinate.ts'
import { LAYERS, type Layer, type Point, type Shape } from '../drawing.ts'
import { emOf, textWidth, weightOf } from '../lettering/measure.ts'
import { PENS } from '../pen.ts'
import type { LooseSheet } from '../sheet/looseSheet.ts'
import { type Attributes, element, escaped, FONTS } from './element.ts'

const number = (value: number): string => String(round(value))

const RADIANS = Math.PI / 180

/** Turns a drawing's y, which runs up, into SVG's, which runs down. */
type Down = (y: number) => number

const textShape = (shape: Extract<Shape, { kind: 'text' }>, down: Down): string => {
  const { at, text, size, anchor, angle } = shape
  const [x, y] = [number(at.x), number(down(at.y))]
  return element(
    'text',
    {
      x,
      y,
      'font-size': number(emOf(size)),
      'font-weight': weightOf(size) === 'semibold' ? '600' : undefined,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      // Whatever font stands in, the words take the room that was kept for them.
      textLength: number(textWidth(text, size)),
      lengthAdjust: 'spacingAndGlyphs',
      transform: angle === 0 ? undefined : `rotate(${number(-angle)} ${x} ${y})`,
    },
    escaped(text),
  )
}

const shapeElement = (shape: Shape, down: Down): string => {
  const pair = ({ x, y }: Point): string => `${number(x)} ${number(down(y))}`
  switch (shape.kind) {
    case 'line': {
      const { from, to } = shape
      return element('line', {
        x1: number(from.x),
        y1: number(down(from.y)),
        x2: number(to.x),
        y2: number(down(to.y)),
      })
    }
    case 'polyline':
      return element(shape.closed ? 'polygon' : 'polyline', { points: shape.points.map(pair).join(' ') })
    case 'circle': {
      const { centre, radius } = shape
      return element('circle', { cx: number(centre.x), cy: number(down(centre.y)), r: number(radius) })
    }
    case 'arc': {
      const { centre, radius, from, to } = shape
      const end = (angle: number): Point => ({
        x: centre.x + radius * Math.cos(angle * RADIANS),
        y: centre.y + radius * Math.sin(angle * RADIANS),
      })
      // Anticlockwise as drawn, which SVG calls the negative way (sweep 0).
      const large = to - from > 180 ? 1 : 0
      const r = number(radius)
      return element('path', { d: `M ${pair(end(from))} A ${r} ${r} 0 ${large} 0 ${pair(end(to))}` })
    }
    case 'text':
      return textShape(shape, down)
  }
}

/** Black or grey as `#rrggbb`. */
const ink = (grey: number): string => {
  const part = Math.round(grey * 255)
    .toString(16)
    .padStart(2, '0')
  return `#${part}${part}${part}`
}

const layerGroup = (
  layer: Layer,
  shapes: readonly Shape[],
  down: Down,
  isNamed: boolean,
): readonly string[] => {
  const { width, grey, dash } = PENS[layer]
  const id = (name: string): string | undefined => (isNamed ? name : undefined)
  const group = (attributes: Attributes, inside: readonly Shape[]): readonly string[] =>
    inside.length === 0
      ? []
      : [element('g', attributes, `\n${inside.map((shape) => shapeElement(shape, down)).join('\n')}\n`)]
  return [
    ...group(
      {
        id: id(layer),
        fill: 'none',
        stroke: ink(grey),
        'stroke-width': number(width),
        'stroke-dasharray': dash.length === 0 ? undefined : dash.map(number).join(' '),
      },
      shapes.filter(({ kind }) => kind !== 'text'),
    ),
    ...group(
      { id: id(layer === 'text' ? 'text' : `${layer}-text`), fill: ink(grey) },
      shapes.filter(({ kind }) => kind === 'text'),
    ),
  ]
}

/**
 * Shapes as SVG groups, a layer each, fine marks first. `isNamed` gives the groups ids, which only a file of
 * its own can have: in a page with several drawings the same id would stand twice.
 */
export const svgLayers = (
  shapes: readonly Shape[],
  height: number,
  { isNamed }: { readonly isNamed: boolean },
): readonly string[] =>
  LAYERS.flatMap((layer) =>
    layerGroup(
      layer,
      shapes.filter((shape) => shape.layer === layer),
      (y) => height - y,
      isNamed,
    ),
  )

/** One SVG at true size round what is drawn in it: width and height in millimetres, one unit of the drawing a millimetre. */
export const millimetrePage = (
  { title, width, height }: Pick<LooseSheet, 'title' | 'width' | 'height'>,
  words: readonly string[],
  inside: readonly string[],
): string => {
  const [wide, high] = [number(width), number(height)]
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${wide}mm`,
      height: `${high}mm`,
      viewBox: `0 0 ${wide} ${high}`,
      role: 'img',
      'aria-labelledby': words.length > 0 ? 'title description' : 'title',
      'font-family': FONTS,
    },
    [
      '',
      element('title', { id: 'title' }, escaped(title)),
      ...(words.length > 0 ? [element('desc', { id: 'description' }, escaped(words.join('\n')))] : []),
      ...inside,
      '',
    ].join('\n'),
  )}\n`
}

/**
 * Writes a sheet as one SVG at true size [mm]: a group for every layer, arcs as arcs, text as text. No script, nothing
 * fetched. Coordinates are rounded to 0.1 µm, so that the same sheet gives the same bytes.
 */
export const svgDrawing = (sheet: LooseSheet): string =>
  millimetrePage(sheet, sheet.words, svgLayers(sheet.shapes, sheet.height, { isNamed: true }))
