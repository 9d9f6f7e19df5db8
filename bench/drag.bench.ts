import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { launch, newContext } from '../scripts/openBench/browser.ts'
import { startServer } from '../scripts/openBench/server.ts'
import type { Row, Rows } from './row.ts'

/** One event of Chromium's trace. */
interface TraceEvent {
  readonly name: string
  readonly ph: string
  readonly ts: number
  readonly dur?: number
  /** What the thread itself was at work of it: on a busy machine others take turns [µs]. */
  readonly tdur?: number
  readonly pid: number
  readonly tid: number
  readonly args?: { readonly name?: string; readonly data?: { readonly type?: string } }
}

/** What of the page's thread is script: handlers, callbacks, microtasks, what they parse, and the clearing up after them. */
const SCRIPT = new Set([
  'EvaluateScript',
  'FunctionCall',
  'EventDispatch',
  'FireAnimationFrame',
  'HandlePostMessage',
  'RunMicrotasks',
  'TimerFire',
  'ParseHTML',
  'MinorGC',
  'MajorGC',
  'V8.GC_SCAVENGER',
  'V8.GCScavenger',
])

const quantile = (values: readonly number[], p: number): number => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? 0
}

/** Thread of the page that was traced: the renderer's main thread with most script on it. */
const mainThread = (events: readonly TraceEvent[]): ((event: TraceEvent) => boolean) => {
  const named = events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
  const load = (pid: number, tid: number): number =>
    events.filter((one) => one.pid === pid && one.tid === tid && one.name === 'FunctionCall').length
  const main = named.sort((a, b) => load(b.pid, b.tid) - load(a.pid, a.tid))[0]
  return ({ pid, tid }) => main !== undefined && pid === main.pid && tid === main.tid
}

/**
 * Milliseconds of some events for every move of the hand: from one move of the pointer to the next, which come a frame apart,
 * so that a move has its answer and its picture with it. What lies within another event is counted once.
 */
const perMove = (
  events: readonly TraceEvent[],
  wanted: (event: TraceEvent) => boolean,
): readonly number[] => {
  const moves = events
    .filter(({ name, args }) => name === 'EventDispatch' && args?.data?.type === 'pointermove')
    .map(({ ts }) => ts)
    .sort((a, b) => a - b)
  const spans = events
    .filter((event) => event.ph === 'X' && event.dur !== undefined && wanted(event))
    .sort((a, b) => a.ts - b.ts)
  const sums = moves.map(() => 0)
  let covered = 0
  for (const { ts, dur = 0, tdur = dur } of spans) {
    const end = ts + dur
    // Spans lie within each other or apart.
    if (end <= covered) continue
    covered = end
    const move = moves.findLastIndex((start) => start <= ts)
    if (move >= 0) sums[move] = (sums[move] ?? 0) + tdur / 1000
  }
  return sums.slice(1, -1)
}

const MOVES = 240

/** Before a move: looks out for the picture that is drawn anew. */
const LOOK_OUT = `void (globalThis.answered = new Promise((go) => {
  const watch = new MutationObserver(() => { watch.disconnect(); requestAnimationFrame(go) })
  watch.observe(document.querySelector('.stage-front'), { childList: true })
  setTimeout(go, 400)
}))`

/** Drags the ring of Greylag up and down with the mouse, each move once the one before has been answered. */
const drag = async (page: Page): Promise<void> => {
  const grip = page.locator('.grip[data-key="row fuel can ring"]')
  const box = await grip.boundingBox()
  if (box === null) throw new Error('The ring of Greylag has no handle')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  for (let i = 0; i < MOVES; i++) {
    // Down and up by turns, far enough each time that something changes.
    const phase = i % 40
    await page.evaluate(LOOK_OUT)
    await page.mouse.move(x, y + 2.5 * (phase < 20 ? phase : 40 - phase))
    await page.evaluate('answered')
  }
  await page.mouse.up()
}

const CATEGORIES = [
  'devtools.timeline',
  'disabled-by-default-devtools.timeline',
  'v8',
  '__metadata',
  'toplevel',
]

const folderSize = (path: string): number =>
  readdirSync(path, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(js|css|wasm|woff2|html)$/.test(entry.name))
    .reduce((sum, entry) => sum + statSync(join(entry.parentPath, entry.name)).size, 0)

interface Loaded {
  /** [kB] */
  readonly sent: number
  /** [ms] */
  readonly ready: number
  readonly longest: number
  readonly blocked: number
}

const load = async (page: Page, address: string): Promise<Loaded> => {
  let sent = 0
  page.on('response', async (response) => {
    const sizes = await response
      .request()
      .sizes()
      .catch(() => null)
    sent += sizes === null ? 0 : sizes.responseBodySize + sizes.responseHeadersSize
  })
  await page.addInitScript(`globalThis.longTasks = []
    new PerformanceObserver((list) => longTasks.push(...list.getEntries().map(({ duration }) => duration)))
      .observe({ type: 'longtask', buffered: true })`)
  const begun = performance.now()
  await page.goto(address)
  await page.locator('.answer-value').first().waitFor()
  const ready = performance.now() - begun
  const tasks = (await page.evaluate('longTasks')) as number[]
  return {
    sent: sent / 1000,
    ready,
    longest: Math.max(0, ...tasks),
    blocked: tasks.reduce((sum, task) => sum + Math.max(0, task - 50), 0),
  }
}

/** The largest example under the hand in Chromium, and how a page of the bench comes up. */
export const rows: Rows = async () => {
  const server = await startServer()
  const browser = await launch()
  const measured: Row[] = []
  try {
    const { context } = await newContext(browser)
    const home = await context.newPage()
    await home.goto(server.address)
    const link = home.getByRole('link', { name: 'Greylag', exact: true }).first()
    const stove = new URL((await link.getAttribute('href')) ?? '', server.address).href
    await home.close()
    const fresh = await newContext(browser)
    await fresh.context.addInitScript(
      "if (location.protocol === 'http:') localStorage.setItem('tinwright.guide', 'done')",
    )
    const page = await fresh.context.newPage()
    const first = await load(page, stove)
    await page.waitForLoadState('networkidle')
    // A first gesture warms the page up, as a hand does.
    await drag(page)
    await browser.startTracing(page, { categories: CATEGORIES })
    await drag(page)
    const trace = JSON.parse(String(await browser.stopTracing())) as {
      readonly traceEvents: readonly TraceEvent[]
    }
    const isMain = mainThread(trace.traceEvents)
    const events = trace.traceEvents.filter(isMain)
    const script = perMove(events, ({ name }) => SCRIPT.has(name))
    const all = perMove(
      events,
      ({ name }) => name === 'RunTask' || name.endsWith('ThreadControllerImpl::RunTask'),
    )
    const frames = `${script.length} moves`
    measured.push(
      {
        name: `dragging a row of greylag, script a frame, median of ${frames}`,
        value: quantile(script, 0.5),
        unit: 'ms',
        bar: null,
      },
      {
        name: `dragging a row of greylag, script a frame, 95th percentile of ${frames}`,
        value: quantile(script, 0.95),
        unit: 'ms',
        bar: { atMost: 16 },
      },
      {
        name: 'dragging a row of greylag, all work of the page’s thread a frame, median',
        value: quantile(all, 0.5),
        unit: 'ms',
        bar: null,
      },
      {
        name: 'dragging a row of greylag, all work of the page’s thread a frame, 95th percentile',
        value: quantile(all, 0.95),
        unit: 'ms',
        bar: null,
      },
      { name: 'first visit to greylag, sent', value: first.sent, unit: 'kB', bar: null },
      {
        name: 'first visit to greylag, until its answers are there',
        value: first.ready,
        unit: 'ms',
        bar: null,
      },
      { name: 'first visit to greylag, longest task', value: first.longest, unit: 'ms', bar: null },
      {
        name: 'first visit to greylag, tasks beyond 50 ms, together',
        value: first.blocked,
        unit: 'ms',
        bar: null,
      },
      {
        name: 'all pages of the bench, built',
        value: folderSize(join(import.meta.dirname, '..', 'dist', 'web')) / 1000,
        unit: 'kB',
        bar: null,
      },
    )
    await fresh.context.close()
    await context.close()
  } finally {
    await browser.close()
    await server.close()
  }
  return measured
}
