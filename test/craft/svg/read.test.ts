import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readSvg, type SvgNode } from '#craft/svg/read.ts'

const count = (node: SvgNode): number =>
  1 + node.children.reduce((sum, child) => sum + (typeof child === 'string' ? 0 : count(child)), 0)

describe('an SVG of this house, read', () => {
  test.each(readdirSync('docs/pictures').filter((name) => name.endsWith('.svg')))('%s, whole', (name) => {
    const svg = readFileSync(`docs/pictures/${name}`, 'utf8').trim()
    expect(count(readSvg(svg))).toBe(svg.match(/<[a-zA-Z]/g)?.length)
  })

  test('attributes and text, letters that had to be written otherwise', () => {
    const root = readSvg('<svg a="1" b-c="&lt;&quot;x"><text>5 &lt; 6 &amp; ½</text></svg>')
    expect(root.attributes.get('b-c')).toBe('<"x')
    expect((root.children[0] as SvgNode).children).toEqual(['5 < 6 & ½'])
  })

  test.each(['<svg>', '<svg></g>', '<svg/><svg/>', '<!-- no --><svg/>', "<svg a='1'/>", '', 'words'])(
    '%s is refused',
    (text) => {
      expect(() => readSvg(text)).toThrow(SyntaxError)
    },
  )
})
