import type { Drawing } from '../drawing.ts'
import { element, escaped, FONTS } from '../svg/element.ts'
import { svgLayers } from '../svg/write.ts'

const number = (value: number): string => String(Number(value.toFixed(3)))

/**
 * A step's picture as SVG, in millimetres; the same picture gives the same bytes. `words` are what the picture does not
 * show: what to do, what to mind. They travel in its description.
 */
export const stepSvg = ({ title, width, height, shapes }: Drawing, words: readonly string[] = []): string => {
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
      element('rect', { width: wide, height: high, fill: '#ffffff' }),
      ...svgLayers(shapes, height, { isNamed: false }),
      '',
    ].join('\n'),
  )}\n`
}
