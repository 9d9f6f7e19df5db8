import { element, escaped, FONTS } from '../svg/element.ts'
import type { Sheet } from './sheet.ts'

export interface PageText {
  readonly width: number
  readonly height: number
  readonly title: string
  readonly description: string
}

/** A sheet as one SVG file: no script, nothing fetched, figures of equal width. */
export const svgPage = (sheet: Sheet, { width, height, title, description }: PageText): string => {
  const text = (name: string, words: string): string => element(name, { id: name }, escaped(words))
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      'aria-labelledby': 'title desc',
      'font-family': FONTS,
      style: 'font-variant-numeric: tabular-nums',
    },
    [
      '',
      text('title', title),
      text('desc', description),
      element('defs', {}, `\n${sheet.definitions()}\n`),
      element('rect', { width, height, fill: sheet.theme.paper }),
      sheet.body(),
      '',
    ].join('\n'),
  )}\n`
}
