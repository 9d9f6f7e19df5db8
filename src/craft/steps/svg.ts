import type { Drawing } from '../drawing.ts'
import { element } from '../svg/element.ts'
import { millimetrePage, svgLayers } from '../svg/write.ts'

/**
 * A step's picture as SVG, in millimetres; the same picture gives the same bytes. `words` are what the picture does not
 * show: what to do, what to mind. They travel in its description.
 */
export const stepSvg = (drawing: Drawing, words: readonly string[] = []): string =>
  millimetrePage(drawing, words, [
    element('rect', { width: drawing.width, height: drawing.height, fill: '#ffffff' }),
    ...svgLayers(drawing.shapes, drawing.height, { isNamed: false }),
  ])
