import { readFileSync } from 'node:fs'
import { orThrow } from '#basis/problem.ts'
import { nodeEnvironment } from '#cli/environment.ts'
import { gatherPlan, viewsOf } from '#compose/plan.ts'
import { planHtml, planPdf } from '#craft/plan/plan.ts'
import { readStove } from '#stove/document/read.ts'
import { timing } from './measure.ts'
import type { Row, Rows } from './row.ts'

const EXAMPLES = ['redshank', 'heron', 'greylag'] as const

/**
 * A plan pack from a stove whose burn is known: solids and their pictures, the PDF, the page for a screen. What the burn with its bands
 * takes has rows of its own.
 */
export const rows: Rows = async () => {
  const env = nodeEnvironment()
  const kernel = await env.solidKernel()
  const measured: Row[] = []
  for (const name of EXAMPLES) {
    const file = readFileSync(new URL(`../examples/${name}.stove.json`, import.meta.url), 'utf8')
    const stove = orThrow(readStove(file))
    const wish = {
      file,
      shelf: null,
      bandSets: 8,
      kernel,
      date: '2031-05-17',
      version: env.version,
      author: null,
      licence: null,
      fonts: env.fonts(),
      script: env.planScript(),
    }
    const input = gatherPlan(stove, wish, () => undefined)
    const pictures = await timing(() => viewsOf(stove, kernel))
    const pdf = await timing(() => planPdf(input, 'A4'))
    const html = await timing(() => planHtml(input))
    const ms = (seconds: number): number => seconds * 1000
    const { pages } = await planPdf(input, 'A4')
    measured.push(
      {
        name: `plan pack of ${name} (${pages} pages of A4 and a page for a screen)`,
        value: ms(pictures.median + pdf.median + html.median),
        unit: 'ms',
        bar: { atMost: 1000 },
      },
      {
        name: `plan pack of ${name}: solids and pictures`,
        value: ms(pictures.median),
        unit: 'ms',
        bar: null,
      },
      { name: `plan pack of ${name}: PDF`, value: ms(pdf.median), unit: 'ms', bar: null },
      { name: `plan pack of ${name}: page for a screen`, value: ms(html.median), unit: 'ms', bar: null },
    )
  }
  return measured
}
