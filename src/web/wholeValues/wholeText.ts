import { tied } from '#basis/text/breaking.ts'

const NO_BREAK = '\u00a0'

/** A value with its bracket that is longer than this may be parted before it: a narrow column would cut it off. */
const LONGEST = 26

/** In these a space is part of what a maker or a browser reads back. */
const LITERAL: ReadonlySet<string> = new Set([
  'code',
  'kbd',
  'option',
  'pre',
  'script',
  'style',
  'textarea',
  'title',
])

/** Text in which no line ends inside a value: number, unit and bracket hang together by no-break spaces. */
export const wholeText = (text: string): string =>
  /\d/.test(text)
    ? tied(text).replace(/[^ ]*\u00a0\([^ )]*\)/g, (value) =>
        value.length > LONGEST ? value.replaceAll(`${NO_BREAK}(`, ' (') : value,
      )
    : text

type Props = { readonly children?: unknown }

const wholeChild = (child: unknown): unknown => (typeof child === 'string' ? wholeText(child) : child)

/** The properties of an element of the page with its own text made whole; of a component they are left alone. */
export const wholeProps = (type: unknown, props: unknown): unknown => {
  if (typeof type !== 'string' || LITERAL.has(type)) return props
  const { children } = props as Props
  if (typeof children === 'string') {
    const whole = wholeText(children)
    return whole === children ? props : { ...(props as Props), children: whole }
  }
  if (!Array.isArray(children) || !children.some((child) => typeof child === 'string')) return props
  return { ...(props as Props), children: children.map(wholeChild) }
}
