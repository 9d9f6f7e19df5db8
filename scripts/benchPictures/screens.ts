import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { ask, stoveNamed } from '../openBench/ask.ts'
import { launch, newContext } from '../openBench/browser.ts'
import { type BenchServer, startServer } from '../openBench/server.ts'
import { layLogger, makeBurns } from './burns.ts'

/** Ids of the demo's stoves, one of its series among them, and of a variant and two burns that are made for the pictures. */
export type Stoves = Readonly<
  Record<'Redshank' | 'Heron' | 'Greylag' | 'inSeries' | 'variant' | 'burn' | 'burning', string>
>

/** One screen of the bench as it goes into docs/pictures/bench. */
export interface BenchScreen {
  readonly name: string
  readonly path: (stoves: Stoves) => string
  /** What has to stand there before the picture is taken. */
  readonly shows: string
  /** What a maker does first, where the screen is more than its opening. */
  readonly first?: (page: Page) => Promise<void>
  /** In the dark as well: on a desk, or so wide. */
  readonly dark?: true | number
}

/** Every room adds its screens here. */
export const BENCH_SCREENS: readonly BenchScreen[] = [
  { name: 'stoves', path: () => '/', shows: '.stove-row:nth-of-type(1) img', dark: true },
  { name: 'workshop', path: () => '/workshop', shows: '.workshop-place' },
  { name: 'help', path: () => '/help', shows: '.help-row .source' },
  { name: 'stove', path: ({ Redshank }) => `/stove/${Redshank}`, shows: '.answer-range', dark: true },
  { name: 'variant', path: ({ variant }) => `/stove/${variant}`, shows: '.stage-ghost' },
  { name: 'space', path: ({ Greylag }) => `/stove/${Greylag}/space`, shows: '.space-canvas' },
  { name: 'family', path: ({ variant }) => `/stove/${variant}/family`, shows: '.family-do' },
  {
    name: 'beside',
    path: ({ Heron, variant }) => `/beside/${Heron}+${variant}`,
    shows: '.beside-picture svg',
  },
  { name: 'plan', path: ({ Heron }) => `/stove/${Heron}/plan`, shows: 'main h1' },
  { name: 'trials', path: ({ Heron }) => `/stove/${Heron}/trials`, shows: '.dot-plot' },
  { name: 'desk', path: ({ burn }) => `/trial/${burn}`, shows: '.metric-list', dark: true },
  {
    name: 'logger',
    path: ({ burn }) => `/trial/${burn}`,
    shows: '.log-table',
    first: layLogger,
    dark: true,
  },
  {
    name: 'burn',
    path: ({ burning }) => `/burn/${burning}`,
    shows: '.burn-buttons small',
    first: (page) => page.getByRole('button', { name: 'I am outdoors' }).click(),
    dark: 360,
  },
  {
    name: 'verdict',
    path: ({ inSeries }) => `/stove/${inSeries}/trials`,
    shows: '.verdicts li',
    first: (page) =>
      page.getByRole('heading', { name: 'Did it help?' }).evaluate((heading) => heading.scrollIntoView()),
  },
  { name: 'shelf', path: () => '/shelf', shows: '.shelf-row, .fits' },
  { name: 'start', path: () => '/start', shows: 'main h1' },
]

const WIDTHS = [
  [360, 740],
  [1280, 800],
  [2560, 1440],
] as const

const DARK_WIDTH = 1280

/** Everything that is worked out has been (`Burning it …`), bands too, and no letter waits for its font. */
const AT_REST = `document.fonts.ready.then(
  () => !/\\b[A-Z][a-z]+ing\\b[^.\\n]* …|Bands follow/.test(document.body.innerText))`

const rest = async (page: Page): Promise<void> => {
  for (let tries = 0; tries < 200; tries++) {
    if ((await page.evaluate(AT_REST)) === true) return
    await page.waitForTimeout(100)
  }
}

/** Where the workshop of a maker lies on Linux; the pictures' own lies in a folder for passing things. */
const PLACE = '/home/warden/.local/share/tinwright/workshop.tinwright'

const atHome = (page: Page): Promise<unknown> =>
  page.route('**/api/about', async (route) => {
    const response = await route.fetch()
    const said = await response.text()
    await route.fulfill({ response, body: said.replace(/"place":"[^"]*"/, `"place":"${PLACE}"`) })
  })

/** Heron with its ring of secondary holes 8 mm lower: something to see in a family, and side by side. */
const makeVariant = async (server: BenchServer, heron: string): Promise<string> => {
  const { revision } = await ask<{ readonly revision: { readonly id: string; readonly text: string } }>(
    server,
    'open',
    { document: heron },
  )
  const at = { id: 'picture-variant', client: 'pictures', at: '2031-05-17T14:05:00Z' }
  const wanted = {
    id: 'picture-variant',
    kind: 'stove',
    name: 'Heron, ring lower',
    revision: 'picture-variant-1',
    text: revision.text
      .replace('"name": "Heron"', '"name": "Heron, ring lower"')
      .replace('"height": "30 mm"', '"height": "38 mm"'),
    note: 'Ring 8 mm lower, for more room above the fuel.',
    parents: [revision.id],
  }
  await ask(server, 'create', { act: at, wanted })
  return wanted.id
}

/** Takes the pictures, screen by screen, in a workshop of its own. */
export const picturesOf = async (
  screens: readonly BenchScreen[],
  folder: string,
  told: (line: string) => void,
): Promise<void> => {
  const server = await startServer()
  const browser = await launch()
  try {
    const heron = await stoveNamed(server, 'Heron')
    const variant = await makeVariant(server, heron)
    const { document } = await ask<{ readonly document: { readonly id: string; readonly head: string } }>(
      server,
      'open',
      { document: heron },
    )
    const stoves: Stoves = {
      ...(await makeBurns(server, document)),
      variant,
      Redshank: await stoveNamed(server, 'Redshank'),
      Heron: heron,
      Greylag: await stoveNamed(server, 'Greylag'),
      inSeries: await stoveNamed(server, 'Heron A, as planned'),
    }
    for (const { name, path, shows, first, dark } of screens)
      for (const [width, height] of WIDTHS)
        for (const look of ['light', 'dark'] as const) {
          if (look === 'dark' && width !== (dark === true ? DARK_WIDTH : dark)) continue
          const { context } = await newContext(browser, { width, height, look })
          await context.addInitScript(
            "if (location.protocol === 'http:') localStorage.setItem('tinwright.guide', 'done')",
          )
          const page = await context.newPage()
          page.setDefaultTimeout(60_000)
          await atHome(page)
          await page.goto(new URL(path(stoves), server.address).href)
          await page.locator(shows).first().waitFor()
          await first?.(page)
          await rest(page)
          const file = `${name}-${width}${look === 'dark' ? '-dark' : ''}.png`
          await page.screenshot({ path: join(folder, file) })
          told(file)
          await page.unrouteAll({ behavior: 'ignoreErrors' })
          await context.close()
        }
  } finally {
    await browser.close()
    await server.close()
  }
}
