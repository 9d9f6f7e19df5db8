import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { PATIENCE } from '#scripts/openBench/browser.ts'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface AxeResult {
  readonly violations: readonly {
    readonly id: string
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[]
  }[]
}

/** Without a change for so long a page has come to rest; one that never does is looked at after the longest [ms]. */
const REST = { quiet: 150, longest: 5_000 }

/** Waits until the letters are there and nothing on the page changes any more. */
export const rested = async (page: Page): Promise<void> => {
  await page.evaluate(`document.fonts.ready.then(() => new Promise((done) => {
    const begun = performance.now()
    let last = begun
    const watch = new MutationObserver(() => { last = performance.now() })
    watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true })
    const look = () => {
      const now = performance.now()
      if (now - last < ${REST.quiet} && now - begun < ${REST.longest}) return setTimeout(look, 30)
      watch.disconnect()
      done(true)
    }
    look()
  }))`)
}

/** What axe finds wrong with a page as it stands, WCAG 2.2 AA and good practice. */
export const axeViolations = async (page: Page): Promise<readonly string[]> => {
  await rested(page)
  await page.evaluate(AXE)
  const found = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as AxeResult
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 200)} ${failureSummary ?? ''}`),
  )
}

/**
 * Waits until an expression in the page is true. The page's policy forbids what `page.waitForFunction` does with one.
 */
export const until = async (page: Page, expression: string): Promise<void> => {
  await expect.poll(() => page.evaluate(expression), { timeout: PATIENCE, message: expression }).toBe(true)
}

/** Nothing of the page reaches over its right edge. */
export const sidewaysScroll = async (page: Page): Promise<number> => {
  await rested(page)
  return page.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  ) as Promise<number>
}
