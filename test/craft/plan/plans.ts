import { readFileSync } from 'node:fs'
import { orThrow } from '#basis/problem.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { gatherPlan } from '#compose/plan.ts'
import type { Block, Section } from '#craft/page/block.ts'
import type { PlanInput } from '#craft/plan/input.ts'
import { readStove } from '#stove/document/read.ts'
import { readShelf } from '#stove/document/shelf.ts'
import type { Shelf, Stove } from '#stove/model.ts'
import { fonts } from '../fonts.ts'

const example = (name: string): string => readFileSync(`examples/${name}`, 'utf8')

/** A drawer with few bits: the plan has to say what to take instead. */
export const meagreShelf = (): Shelf => {
  const shelf = orThrow(readShelf(example('shelf.json')))
  return { ...shelf, bits: shelf.bits.filter((_, i) => i % 3 === 0) }
}

export const planOf = async (
  name: string,
  change: (stove: Stove) => Stove = (stove) => stove,
  shelf: Shelf | null = orThrow(readShelf(example('shelf.json'))),
): Promise<PlanInput> => {
  const file = example(`${name}.stove.json`)
  return gatherPlan(
    change(orThrow(readStove(file))),
    {
      file,
      shelf,
      bandSets: 4,
      kernel: await solidKernel(),
      date: '2031-05-17',
      version: '0.1.0',
      author: 'Saltings Bird Count, invented',
      licence: 'CC BY-SA 4.0',
      fonts,
      script: readFileSync('src/page/plan.js', 'utf8'),
    },
    () => undefined,
  )
}

const words = (block: Block): readonly string[] => {
  switch (block.kind) {
    case 'heading':
    case 'subheading':
    case 'text':
      return [block.text]
    case 'list':
      return block.items
    case 'cautions':
      return [block.title, ...block.items]
    case 'table':
      return [...block.head, ...block.rows.flat()]
    case 'facts':
      return block.facts.flatMap(({ label, value, aside }) => [label, value, aside ?? ''])
    case 'picture':
      return [block.says, block.caption ?? '']
    case 'fields':
      return block.fields.flatMap(({ label, unit, beside }) => [label, unit, beside ?? ''])
    case 'beside':
      return [...block.left, ...block.right].flatMap(words)
    case 'together':
      return block.blocks.flatMap(words)
  }
}

/** Everything a plan says in words. */
export const textsOf = (sections: readonly Section[]): readonly string[] =>
  sections.flatMap(({ blocks }) => blocks.flatMap(words))
