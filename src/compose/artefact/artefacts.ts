import { fileNameOf } from '#craft/fileName.ts'
import { GUIDE_DEFAULTS } from '#craft/guide/options.ts'
import type { PlanInput } from '#craft/plan/input.ts'
import { planHtml, planPdf } from '#craft/plan/plan.ts'
import { darkTheme, lightTheme } from '#craft/section/theme.ts'
import { buildSteps } from '#craft/steps/steps.ts'
import { blankSheetsPdf } from '#craft/trial/sheetsPdf.ts'
import { type ReportOutcome, reportOf } from '#science/answers/burn/report.ts'
import { plainSetup } from '#science/answers/burn/setup.ts'
import { blankBuilt, formatBuiltFile } from '#stove/built/blank.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { cautionBlock } from '../page/cautions.ts'
import { stopsBlock } from '../page/findings.ts'
import { shopBlocks } from '../page/shop.ts'
import { stepBlocks } from '../page/steps.ts'
import { page, wrap } from '../page/text.ts'
import { gatherPlan } from '../plan.ts'
import { predictedFor } from '../trialPrediction.ts'
import { cardFile, cardNames, drawCards, sizesFile } from './cards.ts'
import { type ArtefactFile, textFile } from './file.ts'
import { guidesOf } from './guides.ts'
import { shopListOf } from './shop.ts'
import { solidsOf } from './solids.ts'
import { stepFiles } from './steps.ts'
import { templateFiles } from './templates.ts'
import { type MakingTools, type MakingWish, readingPaper } from './wish.ts'

export const ARTEFACTS = [
  'plan pages',
  'plan screen',
  'templates',
  'drawings svg',
  'drawings dxf',
  'shop list',
  'steps',
  'solids',
  'guides',
  'sheets',
  'cards',
  'stove file',
] as const

/** One thing that can be taken away from the bench. */
export type Artefact = (typeof ARTEFACTS)[number]

/** Letters of a page of plain text. */
const WIDE = 78

/** Facets of solids that are looked at or printed [mm]. */
const SOLID_FACETS = { chord: 0.02 }

/** A workplace for one wish: what several files share is worked out once. */
export interface Making {
  readonly plan: () => Promise<PlanInput>
  readonly make: (artefact: Artefact) => Promise<readonly ArtefactFile[]>
}

const stopsOf = ({ document: { stove } }: MakingWish): string | null =>
  stopsBlock(
    checkStove(stove, null).filter(({ severity }) => severity === 'stop'),
    'Do not build this stove as it is drawn:',
    WIDE,
  )

/**
 * Opens a workplace for a wish. Throws `BadInput`, where a file is made, for what the wish says that will not do.
 */
export const makingOf = (wish: MakingWish, tools: MakingTools): Making => {
  const { document, shelf, date, author, licence, paper, solidFormat, cardFormat, bandSets } = wish
  const { stove, file } = document
  const { fonts, script, version, tell } = tools
  const stem = fileNameOf(stove.name)
  const reading = readingPaper(paper)
  const json = JSON.stringify(file)
  const telling = (doing: string) => (done: number, of: number) => tell(doing, of === 0 ? null : done / of)

  let gathered: Promise<PlanInput> | null = null
  const plan = (): Promise<PlanInput> => {
    gathered ??= (async () => {
      tell('Loading what makes solids', null)
      const kernel = await tools.kernel()
      const given = { file: json, shelf, bandSets, kernel, date, version, author, licence, fonts, script }
      return gatherPlan(stove, given, telling('Burning it with every set of coefficients'))
    })()
    return gathered
  }

  let burned: ReportOutcome | null = null
  const burn = (): ReportOutcome => {
    burned ??= reportOf(plainSetup(stove), bandSets, telling('Burning it with every set of coefficients'))
    return burned
  }

  const cards = async (): Promise<readonly ArtefactFile[]> => {
    const theme = wish.cardTheme === 'dark' ? darkTheme : lightTheme
    const made = drawCards(stove, burn(), { shapes: ['wide', 'square'], theme, date, fonts })
    const paint = cardFormat === 'png' ? await tools.painter() : null
    const names = cardNames(stove.name, made.cards)
    const files = made.cards.map((card, i) => {
      tell('Drawing cards', i / made.cards.length)
      return cardFile(card, names[i] as string, cardFormat, paint)
    })
    return [...files, sizesFile(stove.name, made)]
  }

  const makers: Readonly<Record<Artefact, () => Promise<readonly ArtefactFile[]>>> = {
    'plan pages': async () => {
      const input = await plan()
      tell('Setting the pages', null)
      const { pdf } = await planPdf(input, reading)
      return [{ name: `${stem}-plan-${reading.toLowerCase()}.pdf`, bytes: pdf }]
    },
    'plan screen': async () => [textFile(`${stem}-plan.html`, planHtml(await plan()))],
    templates: async () => (await templateFiles(stove, ['pdf'], { paper, date, version, fonts })).files,
    'drawings svg': async () => (await templateFiles(stove, ['svg'], { paper, date, version, fonts })).files,
    'drawings dxf': async () => (await templateFiles(stove, ['dxf'], { paper, date, version, fonts })).files,
    'shop list': async () => [
      textFile(
        `${stem}-shop-list.txt`,
        page(
          wrap(`${stove.name}: shop list`, WIDE),
          stopsOf(wish),
          ...shopBlocks(shopListOf(stove, shelf), WIDE),
          cautionBlock(WIDE),
        ),
      ),
    ],
    steps: async () => {
      const steps = buildSteps(stove)
      const pictures = stepFiles(steps)
      const names = pictures.map(({ name }) => name)
      const words = page(
        wrap(`${stove.name}: ${steps.length} steps`, WIDE),
        stopsOf(wish),
        ...stepBlocks(steps, names, WIDE),
        cautionBlock(WIDE),
      )
      return [textFile(`${stem}-steps.txt`, words), ...pictures]
    },
    solids: async () => {
      tell('Making the parts as solids', null)
      const kernel = await tools.kernel()
      const how = { format: solidFormat, arrangement: 'parts', facets: SOLID_FACETS, version } as const
      return solidsOf(kernel, stove, how).files
    },
    guides: async () => {
      tell('Making drill guides', null)
      const kernel = await tools.kernel()
      return guidesOf(kernel, stove, GUIDE_DEFAULTS, { format: solidFormat, version }).files
    },
    sheets: async () => {
      const prediction = predictedFor(reportOf(plainSetup(stove), 0))
      const made = await blankSheetsPdf(stove, { paper: reading, date, version, fonts, prediction })
      return [
        { name: `${stem}-sheets-${reading.toLowerCase()}.pdf`, bytes: made.pdf },
        textFile(`${stem}.built.json`, formatBuiltFile(blankBuilt(stove))),
      ]
    },
    cards,
    'stove file': async () => [textFile(`${stem}.stove.json`, formatStoveFile(file))],
  }
  return { plan, make: (artefact) => makers[artefact]() }
}
