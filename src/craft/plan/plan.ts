import { flatPatterns } from '../flat/pattern.ts'
import type { Block } from '../page/block.ts'
import { htmlPage } from '../page/html/page.ts'
import { type LaidPage, layPages, type PageWords, pageRoom } from '../page/lay.ts'
import { writePdf } from '../pdf/write.ts'
import { abreast, readingPaper } from '../sheet/abreast.ts'
import { laySheets } from '../sheet/layout.ts'
import { pageSheet } from '../sheet/pageSheet.ts'
import type { PaperName } from '../sheet/paper.ts'
import type { Sheet } from '../sheet/sheet.ts'
import { figureText, figureTwice } from '../told/band.ts'
import type { TrialPrediction } from '../trial/sheet.ts'
import type { PlanInput } from './input.ts'
import { closingSections, openingSections } from './sections.ts'
import { turntableData } from './turntable.ts'

export interface PlanPdf {
  readonly pdf: Uint8Array
  readonly pages: number
  /** The pages that are text and pictures, for tests to measure. */
  readonly laid: readonly LaidPage[]
  /** Every page as it was written, for a screen to show. */
  readonly sheets: readonly Sheet[]
  readonly missingLetters: readonly string[]
}

const issueOf = ({ date, version, author, licence }: PlanInput): string =>
  [author, licence, date, `Tinwright ${version}`].filter((part) => part !== null).join(' · ')

const FOOT =
  'Carbon monoxide: burn outdoors only, never in a tent, shelter or vehicle. Gloves, eye protection, never galvanised metal. Not an approval.'

const wordsOf = (input: PlanInput): PageWords => ({
  title: `${input.stove.name}: a plan`,
  issue: issueOf(input),
  foot: FOOT,
})

/** What the prediction says beside the blanks of a trial sheet. */
const predictedTrial = ({ burn }: PlanInput): TrialPrediction | undefined => {
  if ('noBurn' in burn) return undefined
  const { figures, fuel, boils, course } = burn.report
  const boil = boils.find(({ litres }) => litres === 1)?.time ?? null
  return {
    fuel: figureTwice(fuel.charge, 'mass', 'oz'),
    boil: boil === null ? null : `${figureText(boil, 'timeAfterLighting')} after pot on`,
    flameOut: `${figureText(figures.woodGasTime, 'burnTime')} of gas`,
    charTime: figureText(figures.charTime, 'burnTime'),
    char: figureTwice(figures.charLeft, 'mass', 'oz'),
    firepower: figureTwice(figures.firepower, 'firepower', 'Btu/h'),
    regime: course,
  }
}

/**
 * The plan as one PDF: cover, what it does, what to find, cutting and drilling, steps, templates at true size, as-built and
 * trial sheet, cautions and terms with the stove file as a code. The same input gives the same bytes.
 * Throws `BadInput` for a date that is none and for what the templates refuse.
 */
export const planPdf = async (input: PlanInput, paper: PaperName): Promise<PlanPdf> => {
  const { stove, date, version, fonts } = input
  const words = wordsOf(input)
  const leaf = readingPaper(paper)
  const [opening, closing] = [
    openingSections(input, pageRoom(leaf)),
    closingSections(input, predictedTrial(input)),
  ]
  const drawings = flatPatterns(stove)
  const templates = laySheets(drawings, { paper, stove: stove.name, date, version })
  const count = layPages(opening, leaf, words).length
  const rest = layPages(closing, leaf, words, { first: count + templates.length + 1, of: null }).length
  const of = count + templates.length + rest
  const before = layPages(opening, leaf, words, { first: 1, of })
  const after = layPages(closing, leaf, words, { first: count + templates.length + 1, of })
  const sheets = [
    ...abreast(before.map(pageSheet), paper),
    ...templates,
    ...abreast(after.map(pageSheet), paper),
  ]
  const { bytes, missingLetters } = await writePdf(sheets, { title: words.title, date, version, fonts })
  return { pdf: bytes, pages: sheets.length, laid: [...before, ...after], sheets, missingLetters }
}

const TEMPLATES_ON_SCREEN: readonly Block[] = [
  { kind: 'heading', text: 'Templates' },
  {
    kind: 'text',
    text: 'A screen has no true size. Print the templates from the PDF of this plan, at 100 %, and measure both bars on every page before you drill.',
  },
]

/**
 * The plan as one page for a screen, whole in itself: the same words and pictures, a choice of units, the stove to turn.
 * Throws `SyntaxError` for a script that holds the end of its own element.
 */
export const planHtml = (input: PlanInput): string => {
  const { stove, fonts, script, views } = input
  const sections = [
    ...openingSections(input),
    { id: 'templates', title: 'Templates', blocks: TEMPLATES_ON_SCREEN },
    ...closingSections(input, predictedTrial(input)),
  ]
  return htmlPage({
    title: stove.name,
    about: stove.about,
    issue: issueOf(input),
    sections,
    script,
    data: views === null ? {} : { turntable: turntableData(views.turntable) },
    ...(views === null ? {} : { after: { stove: '<div id="turntable" hidden></div>' } }),
    fonts,
  })
}
