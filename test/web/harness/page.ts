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

/** What axe finds wrong with a page as it stands, WCAG 2.2 AA and good practice. */
export const axeViolations = async (page: Page): Promise<readonly string[]> => {
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
export const sidewaysScroll = (page: Page): Promise<number> =>
  page.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  ) as Promise<number>
