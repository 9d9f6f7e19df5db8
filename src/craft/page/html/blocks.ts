import type { Block, Section } from '../block.ts'
import { pictureSize, withOwnIds } from '../pictureSize.ts'
import { plainHtml, textHtml } from './escape.ts'

/** Counts the pictures of a document, so that ids in them do not meet. */
export interface Counter {
  pictures: number
}

const list = (items: readonly string[], numbered: boolean): string => {
  const tag = numbered ? 'ol' : 'ul'
  return `<${tag}>${items.map((item) => `<li>${textHtml(item)}</li>`).join('')}</${tag}>`
}

const table = ({ head, rows, align }: Extract<Block, { kind: 'table' }>): string => {
  const cell = (tag: 'th' | 'td', text: string, column: number): string => {
    const right = align?.[column] === 'right' ? ' class="right"' : ''
    return `<${tag}${tag === 'th' ? ' scope="col"' : ''}${right}>${textHtml(text)}</${tag}>`
  }
  const titled = head.some((title) => title !== '')
  const heading = titled
    ? `<thead><tr>${head.map((text, i) => cell(text === '' ? 'td' : 'th', text, i)).join('')}</tr></thead>`
    : ''
  const body = rows.map((row) => `<tr>${row.map((text, i) => cell('td', text, i)).join('')}</tr>`).join('')
  return `<div class="wide" tabindex="0" role="group" aria-label="${plainHtml(head.filter((title) => title !== '').join(', ') || 'table')}"><table>${heading}<tbody>${body}</tbody></table></div>`
}

const facts = (all: Extract<Block, { kind: 'facts' }>['facts']): string =>
  `<dl class="facts">${all
    .map(
      ({ label, value, aside }) =>
        `<div><dt>${textHtml(label)}</dt><dd><b>${textHtml(value)}</b>${aside === undefined ? '' : `<small>${textHtml(aside)}</small>`}</dd></div>`,
    )
    .join('')}</dl>`

/** Points on paper to the pixels of a screen that is looked at from about as far. */
const PIXELS_PER_POINT = 1.6

const picture = (block: Extract<Block, { kind: 'picture' }>, counter: Counter): string => {
  const { svg, narrow, says, share, tallest, caption } = block
  const inline = (one: string, shown: 'desk' | 'narrow'): string =>
    withOwnIds(one, `p${++counter.pictures}`)
      // The page says what it shows; its own size gives way to the page's.
      .replace(/^<svg[^>]*>/, (tag) =>
        tag
          .replace(/ (?:width|height|role|aria-labelledby|style)="[^"]*"/g, '')
          .replace('>', ` class="${shown}" role="img" aria-label="${plainHtml(says)}">`),
      )
  // As wide as its share of the page, and no taller than it is on paper.
  const { width, height } = pictureSize(svg)
  const widest =
    tallest === undefined
      ? ''
      : `min(${Math.round(share * 100)}%,${Math.round((tallest * PIXELS_PER_POINT * width) / height)}px)`
  const words = caption === undefined ? '' : `<figcaption>${textHtml(caption)}</figcaption>`
  const style = widest === '' ? `max-width:${Math.round(share * 100)}%` : `max-width:${widest}`
  return `<figure style="${style}">${inline(svg, 'desk')}${narrow === undefined ? '' : inline(narrow, 'narrow')}${words}</figure>`
}

const fields = (all: Extract<Block, { kind: 'fields' }>['fields']): string =>
  `<dl class="fields">${all
    .map(
      ({ label, unit, beside }) =>
        `<div><dt>${textHtml(label)}</dt><dd>${textHtml([unit, beside === undefined ? '' : `(${beside})`].join(' ').trim())}</dd></div>`,
    )
    .join('')}</dl>`

/** A block as a piece of a page for a screen. */
const blockHtml = (block: Block, counter: Counter): string => {
  switch (block.kind) {
    case 'heading':
      return `<h2>${textHtml(block.text)}</h2>`
    case 'subheading':
      return `<h3>${textHtml(block.text)}</h3>`
    case 'text':
      return `<p${block.muted ? ' class="muted"' : ''}>${textHtml(block.text)}</p>`
    case 'list':
      return list(block.items, block.numbered ?? false)
    case 'table':
      return table(block)
    case 'facts':
      return facts(block.facts)
    case 'picture':
      return picture(block, counter)
    case 'cautions':
      return `<aside class="cautions"><p><strong>${textHtml(block.title)}</strong></p>${list(block.items, false)}</aside>`
    case 'fields':
      return fields(block.fields)
    case 'beside': {
      const side = (blocks: readonly Block[]): string =>
        `<div>${blocks.map((one) => blockHtml(one, counter)).join('')}</div>`
      const split = Math.round(block.share * 100)
      return `<div class="beside" style="--left:${split}fr;--right:${100 - split}fr">${side(block.left)}${side(block.right)}</div>`
    }
    case 'together':
      return `<div class="together">${block.blocks.map((one) => blockHtml(one, counter)).join('')}</div>`
  }
}

/** A section with an anchor of its own. */
export const sectionHtml = ({ id, title, blocks }: Section, counter: Counter): string =>
  `<section id="${plainHtml(id)}" aria-label="${plainHtml(title)}">${blocks.map((block) => blockHtml(block, counter)).join('\n')}</section>`
