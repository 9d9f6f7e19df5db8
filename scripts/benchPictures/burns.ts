import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { ask } from '../openBench/ask.ts'
import type { BenchServer } from '../openBench/server.ts'

const root = join(import.meta.dirname, '..', '..')

interface Stove {
  readonly id: string
  readonly head: string
}

/** Burns for the pictures; all of it invented. The first is over, and of the time of examples/heron.logger.csv. */
const DAY = '2031-05-17'
const at = (time: string): string => `${DAY}T${time}Z`
const OVER = {
  format: 'tinwright/trial@1',
  name: 'Heron, a burn in May',
  about: 'Invented for a picture.',
  day: DAY,
  stove: { name: 'Heron', variant: 'A, as planned' },
  fuel: { kind: 'wood-chips', batch: 'sack 2', moisture: { before: '60 g', after: '53 g' } },
  kindling: { what: 'a curl of birch bark', weight: '1 g' },
  weather: { temperature: '14 °C', boilingPoint: '98.4 °C', wind: '0.5 m/s' },
  pot: { weight: '182 g', diameter: '140 mm', lid: false },
  start: 'cold',
  instruments: {
    scale: { resolution: '1 g', accuracy: '0.5 %' },
    thermometer: { resolution: '0.1 K', accuracy: '0.5 K' },
    clock: { resolution: '1 s' },
  },
  phases: [
    {
      phase: 'high power',
      from: { at: '1 min 30 s', fuel: '140 g', pot: '682 g', water: '14.2 °C' },
      to: { at: '15 min 10 s', fuel: '0 g', pot: '648 g', water: '98.4 °C' },
      char: '27 g',
    },
  ],
  events: [
    { id: 'picture-lit', at: at('09:12:00'), event: 'lit' },
    { id: 'picture-flame', at: at('09:13:10'), event: 'flame on' },
    { id: 'picture-pot-on', at: at('09:13:30'), event: 'pot on' },
    { id: 'picture-damper', at: at('09:16:20'), event: 'damper to', turned: '20 deg' },
    { id: 'picture-boil', at: at('09:22:50'), event: 'boil' },
    { id: 'picture-flame-out', at: at('09:27:10'), event: 'flame out' },
    { id: 'picture-pot-off', at: at('09:27:30'), event: 'pot off' },
  ],
  masses: [
    { id: 'picture-fuel', at: at('09:09:30'), of: 'fuel', mass: '140 g' },
    { id: 'picture-pot', at: at('09:10:20'), of: 'pot', mass: '682 g' },
    { id: 'picture-char', at: at('09:36:00'), of: 'char', mass: '27 g' },
  ],
}

/** What was noted in a burn that goes on, so many seconds ago. */
const GOING_ON = [
  [741, { event: 'lit' }],
  [668, { event: 'flame on' }],
  [640, { event: 'pot on' }],
  [472, { event: 'damper to', turned: '20 deg' }],
  [96, { event: 'boil' }],
] as const

const make = (server: BenchServer, id: string, name: string, said: object, stove: Stove): Promise<unknown> =>
  ask(server, 'create', {
    act: { id: `${id}-made`, client: 'pictures', at: '2031-05-17T14:05:00Z' },
    wanted: {
      id,
      kind: 'trial',
      name,
      revision: `${id}-1`,
      text: JSON.stringify(said),
      note: 'Trial begun',
      aboutDocument: stove.id,
      aboutRevision: stove.head,
    },
  })

/** Lays both burns into a workshop: one that is over, one that goes on. */
export const makeBurns = async (
  server: BenchServer,
  stove: Stove,
): Promise<{ readonly burn: string; readonly burning: string }> => {
  const [burn, burning] = ['picture-burn', 'picture-burning']
  await make(server, burn, OVER.name, OVER, stove)
  await make(
    server,
    burning,
    'Heron, burn 25',
    {
      format: OVER.format,
      name: 'Heron, burn 25',
      stove: OVER.stove,
      events: GOING_ON.map(([ago, event], i) => ({
        id: `picture-now-${i}`,
        at: new Date(Date.now() - ago * 1000).toISOString(),
        ...event,
      })),
    },
    stove,
  )
  return { burn, burning }
}

/** The logger's file beside the burn, its clock brought onto the log, its readings offered. */
export const layLogger = async (page: Page): Promise<void> => {
  await page.locator('.logger input[type=file]').setInputFiles(join(root, 'examples', 'heron.logger.csv'))
  await page.locator('.logger-chart canvas').first().waitFor()
  await page.getByLabel('First reading after lighting, in seconds').fill('-120')
  await page.getByRole('combobox', { name: /^Water/ }).selectOption('Pot (°C)')
  await page.getByRole('combobox', { name: /^On it stood/ }).selectOption('stove')
  await page.locator('.found').waitFor()
  await page
    .locator('.logger-chart')
    .first()
    .evaluate((chart) => chart.scrollIntoView())
}
