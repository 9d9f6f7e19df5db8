import { BadInput } from '#basis/problem.ts'
import { type Making, makingOf } from '#compose/artefact/artefacts.ts'
import { asOne, everything } from '#compose/artefact/everything.ts'
import type { MakingTools, MakingWish } from '#compose/artefact/wish.ts'
import { readingPaper } from '#compose/artefact/wish.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { planPdf } from '#craft/plan/plan.ts'
import { sheetSvg } from '#craft/sheet/sheetSvg.ts'
import planScript from '../../../page/plan.js?raw'
import { drawnView, spaceScene } from '../../space/solids.ts'
import { possibleStarts, startShown } from '../../startStove/work.ts'
import { version } from '../../version.ts'
import { loadFonts, loadKernel, loadPainter } from './assets.ts'
import type { JobName, Jobs, Request, Word } from './job.ts'

type Tell = MakingTools['tell']

const say = (word: Word, move: Transferable[] = []): void => postMessage(word, { transfer: move })

/** The last wish and what was worked out for it: the pages that are looked at are those that are fetched. */
let last: { readonly key: string; readonly making: Making } | null = null
let tellNow: Tell = () => undefined

const making = async ({ document, shelf, ...wish }: MakingWish): Promise<Making> => {
  const cans = shelf === null ? null : { bits: shelf.bits, cans: [...shelf.cans] }
  const key = JSON.stringify([document.file, cans, wish])
  if (last?.key === key) return last.making
  const tools: MakingTools = {
    fonts: await loadFonts(),
    script: planScript,
    version,
    kernel: loadKernel,
    painter: loadPainter,
    tell: (doing, share) => tellNow(doing, share),
  }
  last = { key, making: makingOf({ document, shelf, ...wish }, tools) }
  return last.making
}

type Work<N extends JobName> = (wish: Jobs[N]['wish'], tell: Tell) => Promise<Jobs[N]['done']>

const WORK: { readonly [N in JobName]: Work<N> } = {
  pages: async (wish, tell) => {
    const input = await (await making(wish)).plan()
    tell('Setting the pages', null)
    const { sheets, missingLetters } = await planPdf(input, readingPaper(wish.paper))
    const pages = sheets.map((sheet) => ({
      svg: sheetSvg(sheet),
      label: sheet.label,
      width: sheet.size.width,
      height: sheet.size.height,
    }))
    return { pages, missingLetters, noBurn: 'noBurn' in input.burn ? input.burn.noBurn : null }
  },
  make: async ({ artefact, ...wish }, tell) => {
    const place = await making(wish)
    if (artefact === 'everything') return everything(wish, place, { tell })
    const stem = `${fileNameOf(wish.document.stove.name)}-${fileNameOf(artefact)}`
    return asOne(await place.make(artefact), stem, wish.date)
  },
  space: async (wish) => spaceScene(await loadKernel(), wish),
  start: async (choice) => startShown(choice),
  starts: async ({ cans, bits, fuel }, tell) => possibleStarts(cans, bits, fuel, tell),
  drawn: async (wish) => drawnView(await loadKernel(), wish),
}

/** Buffers go over whole instead of being copied. */
const buffersOf = (name: JobName, done: unknown): Transferable[] => {
  if (name === 'make') {
    const file = done as Jobs['make']['done']
    return file === null ? [] : [file.bytes.buffer as ArrayBuffer]
  }
  if (name !== 'space') return []
  const { bodies, outlines } = done as Jobs['space']['done']
  return [
    ...bodies.flatMap(({ positions, normals, edges }) => [positions.buffer, normals.buffer, edges.buffer]),
    ...outlines.map(({ lines }) => lines.buffer),
  ] as ArrayBuffer[]
}

const hand = async ({ id, name, wish }: Request): Promise<void> => {
  const tell: Tell = (doing, share) => say({ id, kind: 'doing', doing, share })
  tellNow = tell
  try {
    const work = WORK[name] as Work<JobName>
    const done = await work(wish as never, tell)
    say({ id, kind: 'done', done }, buffersOf(name, done))
  } catch (error) {
    last = null
    if (error instanceof BadInput) say({ id, kind: 'refused', problems: error.problems })
    else say({ id, kind: 'broken', sentence: error instanceof Error ? error.message : String(error) })
  }
}

addEventListener('message', (event: MessageEvent<Request>) => void hand(event.data))
