import type { Page } from 'playwright-core'
import { ask, stoveNamed } from '../scripts/openBench/ask.ts'
import { launch, newContext } from '../scripts/openBench/browser.ts'
import { startServer } from '../scripts/openBench/server.ts'
import type { Row, Rows } from './row.ts'

const RATE = 10
const CHANNELS = 8
const SECONDS = 3600

/** An hour at 10 Hz from seven thermocouples and a scale: invented, with noise that comes out alike every time. */
const logText = (): string => {
  let state = 12_345
  const noise = (): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff
    return state / 0x7fff_ffff - 0.5
  }
  const head = ['Time (s)', ...Array.from({ length: CHANNELS - 1 }, (_, i) => `T${i + 1} (°C)`), 'Scale (g)']
  const rows = Array.from({ length: SECONDS * RATE }, (_, i) => {
    const t = i / RATE
    const warm = 20 + 580 * (1 - Math.exp(-t / 400))
    const temperatures = Array.from({ length: CHANNELS - 1 }, (_, c) =>
      (warm / (c + 1) + 4 * noise()).toFixed(1),
    )
    return [t.toFixed(1), ...temperatures, (1500 - 0.08 * t + noise()).toFixed(1)].join(',')
  })
  return `${head.join(',')}\n${rows.join('\n')}\n`
}

const quantile = (values: readonly number[], p: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(p * values.length))] ?? 0

/** One wheel a frame on the drawing, and how long script took with each, its drawing included [ms]. */
const wheels = (page: Page, shift: boolean, count: number): Promise<readonly number[]> =>
  page.evaluate(`(async () => {
    const over = document.querySelector('.logger-chart .u-over')
    const box = over.getBoundingClientRect()
    const took = []
    for (let i = 0; i < ${count}; i++) {
      await new Promise((go) => requestAnimationFrame(go))
      const begin = performance.now()
      over.dispatchEvent(new WheelEvent('wheel', {
        bubbles: true, cancelable: true, shiftKey: ${shift},
        deltaY: ${shift ? 'i % 16 < 8 ? 100 : -100' : 'i % 30 < 15 ? -100 : 100'},
        clientX: box.left + box.width / 2, clientY: box.top + 40,
      }))
      // The chart draws in a microtask: it is done when this one is.
      await new Promise((go) => queueMicrotask(go))
      await Promise.resolve()
      took.push(performance.now() - begin)
    }
    return took
  })()`) as Promise<readonly number[]>

const SMOOTH = 16

/** A logger's hour on the trial desk, in Chromium. */
export const rows: Rows = async () => {
  const server = await startServer()
  const browser = await launch()
  try {
    const stove = await stoveNamed(server, 'Heron')
    const { document } = await ask<{ document: { head: string } }>(server, 'open', { document: stove })
    const at = new Date().toISOString()
    await ask(server, 'create', {
      act: { id: 'bench-act', client: 'bench', at },
      wanted: {
        id: 'bench-trial',
        kind: 'trial',
        name: 'An hour',
        revision: 'bench-revision',
        text: '{"format":"tinwright/trial@1"}',
        note: '',
        aboutDocument: stove,
        aboutRevision: document.head,
      },
    })
    const { context } = await newContext(browser)
    const page = await context.newPage()
    await page.goto(`${server.address}trial/bench-trial`)
    const field = page.locator('.logger input[type=file]')
    await field.waitFor({ state: 'attached' })
    const begin = performance.now()
    await field.setInputFiles({ name: 'hour.csv', mimeType: 'text/csv', buffer: Buffer.from(logText()) })
    await page.locator('.logger-chart canvas').first().waitFor()
    const drawn = performance.now() - begin
    await page.locator('.found').waitFor({ timeout: 120_000 })
    const through = performance.now() - begin
    const [zoom, pan] = [await wheels(page, false, 120), await wheels(page, true, 120)]
    const row = (name: string, value: number, bar: Row['bar'] = null): Row => ({
      name,
      value,
      unit: 'ms',
      bar,
    })
    return [
      row('1 h × 10 Hz × 8 channels: from the file to the picture', drawn),
      row('1 h × 10 Hz × 8 channels: looked through for boils, rates, outliers', through),
      row('zoom of it, script per step, p50', quantile(zoom, 0.5)),
      row('zoom of it, script per step, p95', quantile(zoom, 0.95), { atMost: SMOOTH }),
      row('pan of it, script per step, p50', quantile(pan, 0.5)),
      row('pan of it, script per step, p95', quantile(pan, 0.95), { atMost: SMOOTH }),
    ]
  } finally {
    await browser.close()
    await server.close()
  }
}
