import { readdirSync, readFileSync } from 'node:fs'
import type { DemoFile } from '#store/demo.ts'

/** `examples/series/series.json`, as `scripts/series.ts` writes it. */
interface Series {
  readonly stoves: readonly { readonly file: string; readonly from: string; readonly note: string }[]
  readonly trials: readonly string[]
}

/**
 * The demo of a new workshop, all of it invented: the stoves and the shelf in `examples/`, then the series of one of them,
 * variants and burns. That one comes last of the others, so that its family stands behind them in the list of stoves.
 */
export const demoFiles = (examples: string): readonly DemoFile[] => {
  const textOf = (name: string): string => readFileSync(examples + name, 'utf8')
  const { stoves, trials } = JSON.parse(textOf('series/series.json')) as Series
  const founders = new Set(stoves.map(({ from }) => from))
  const single = readdirSync(examples)
    .filter((name) => name.endsWith('.stove.json') || name === 'shelf.json')
    .sort((a, b) => Number(founders.has(a)) - Number(founders.has(b)) || (a < b ? -1 : 1))
  return [
    ...single.map((name) => ({ name, text: textOf(name) })),
    ...stoves.map(({ file, from, note }) => ({ name: file, text: textOf(`series/${file}`), from, note })),
    ...trials.map((name) => ({ name, text: textOf(`series/${name}`) })),
  ]
}
