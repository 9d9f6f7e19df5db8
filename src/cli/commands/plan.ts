import { cautionBlock } from '#compose/page/cautions.ts'
import { findingsOf, stopsBlock } from '#compose/page/findings.ts'
import { page, wrap } from '#compose/page/text.ts'
import { gatherPlan } from '#compose/plan.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { planHtml, planPdf } from '#craft/plan/plan.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { documentFrom, shelfFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { missingLettersLine } from '../page/missingLetters.ts'
import { bandSets, watched } from '../sampling.ts'
import { paperOf } from './templates.ts'

export interface PlanOptions {
  readonly paper: string
  readonly out: string
  readonly bands: string
  readonly shelf?: string
  readonly author?: string
  readonly licence?: string
  readonly date?: string
  readonly json?: boolean
}

/** The whole plan as two files: pages to print, and a page for a screen. */
export const plan = async (env: Environment, file: string, options: PlanOptions): Promise<ExitCode> => {
  const paper = paperOf(options.paper)
  const sets = bandSets(options.bands)
  const { stove, file: document } = documentFrom(env, file)
  const shelf = options.shelf === undefined ? null : shelfFrom(env, options.shelf)
  const findings = checkStove(stove, null)
  const stops = findings.filter(({ severity }) => severity === 'stop')
  const kernel = await env.solidKernel()
  const input = watched(env, (progress) =>
    gatherPlan(
      stove,
      {
        file: JSON.stringify(document),
        shelf,
        bandSets: sets,
        kernel,
        date: options.date ?? env.today(),
        version: env.version,
        author: options.author ?? null,
        licence: options.licence ?? null,
        fonts: env.fonts(),
        script: env.planScript(),
      },
      progress,
    ),
  )
  const made = await planPdf(input, paper)
  const html = planHtml(input)
  const name = fileNameOf(stove.name)
  const paths = [
    writeInto(env, options.out, `${name}-plan-${paper.toLowerCase()}.pdf`, made.pdf),
    writeInto(env, options.out, `${name}-plan.html`, new TextEncoder().encode(html)),
  ] as const
  const code = stops.length === 0 ? EXIT.fine : EXIT.findings
  const { pages, missingLetters } = made
  if (options.json === true) {
    const answer = {
      stove: stove.name,
      paper,
      pages,
      paths,
      missingLetters,
      stopFindings: stops,
      warnFindings: findings.filter(({ severity }) => severity === 'warn'),
    }
    env.out(`${JSON.stringify({ ...answer, cautions: MAKING_CAUTIONS }, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      [
        wrap(`${paths[0]}: ${pages} pages of ${paper}, templates at true size`, env.width),
        wrap(`${paths[1]}: the same for a screen, in one file, with the stove to turn`, env.width),
      ].join('\n'),
      stopsBlock(stops, 'Do not build this stove as it is drawn:', env.width),
      findingsOf('warn', findings, env.width),
      'noBurn' in input.burn ? wrap(`As drawn it does not burn: ${input.burn.noBurn}`, env.width) : null,
      wrap(
        'Print at 100 % (no “fit to page”), then measure both bars on every template: each is 100 mm long, the line beside it 4 in.',
        env.width,
      ),
      missingLettersLine(missingLetters, env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
