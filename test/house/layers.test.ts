import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { filesUnder, ROOT } from './files.ts'
import { LAYERS, layerFaults } from './layers.ts'

const folders = readdirSync(join(ROOT, 'src'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)

interface Project {
  readonly references?: readonly { readonly path: string }[]
}

const project = (path: string): Project => JSON.parse(readFileSync(join(ROOT, path), 'utf8')) as Project
const referencesOf = (path: string): readonly string[] =>
  (project(path).references ?? []).map((reference) => reference.path)

describe('the layers of src', () => {
  it('keeps every module to its layer', () => {
    const files = filesUnder('src', ['.ts', '.tsx'])
    expect(files.length).toBeGreaterThan(0)
    expect(files.flatMap(({ path, text }) => layerFaults(path, text))).toEqual([])
  })

  it.each(folders)('%s is a layer, and the compiler checks it', (folder) => {
    expect(Object.keys(LAYERS)).toContain(folder)
    expect(referencesOf('tsconfig.json')).toContain(`src/${folder}`)
  })

  it.each(folders)('%s: its compiler project sees no more than the layer may', (folder) => {
    const file = `src/${folder}/tsconfig.json`
    expect(existsSync(join(ROOT, file))).toBe(true)
    const layer = LAYERS[folder]
    const allowed = [...(layer?.imports ?? []), ...(layer?.types ?? [])].map((name) => `../${name}`)
    expect(allowed).toEqual(expect.arrayContaining([...referencesOf(file)]))
  })

  it('has no rooms named for nothing in particular', () => {
    const vague = /(^|\/)(utils?|helpers?|common|misc)(\/|\.|$)/
    const files = ['src', 'test', 'bench', 'scripts'].flatMap((folder) =>
      filesUnder(folder, ['.ts', '.mjs', '.tsx']),
    )
    expect(files.map(({ path }) => path).filter((path) => vague.test(path))).toEqual([])
  })
})

describe('the check of layers', () => {
  const allowed: readonly [path: string, text: string][] = [
    ['src/stove/can/code.ts', "import { metres } from '#basis/units.ts'"],
    ['src/stove/can/code.ts', "import { part } from '../model.ts'"],
    ['src/craft/plan.ts', "import type { Prediction } from '#science/steady/prediction.ts'"],
    ['src/cli/main.ts', "import { readFileSync } from 'node:fs'"],
    ['src/basis/date.ts', 'export const read = (text: string) => new Date(text)'],
    [
      'src/basis/text.ts',
      "// import { readFileSync } from 'node:fs'; Math.random()\nexport const a = 'Math.random'",
    ],
    ['src/store/save.ts', 'export const now = () => Date.now()'],
    ['src/web/a.tsx', "import bib from '../../docs/references.bib?raw'"],
  ]
  it.each(allowed)('lets %s be: %s', (path, text) => {
    expect(layerFaults(path, text)).toEqual([])
  })

  const refused: readonly [path: string, text: string, fault: RegExp][] = [
    ['src/basis/a.ts', "import { Stove } from '#stove/model.ts'", /basis may not know stove/],
    ['src/basis/a.ts', "import type { Stove } from '../stove/model.ts'", /basis may not know stove/],
    ['src/basis/a.ts', "export * from '#science/gas/mixture.ts'", /basis may not know science/],
    ['src/stove/a.ts', "type A = import('#science/gas/mixture.ts').Mixture", /stove may not know science/],
    ['src/science/a.ts', "const a = await import('#proof/trial.ts')", /science may not know proof/],
    ['src/craft/a.ts', "import { predict } from '#science/steady/predict.ts'", /types only/],
    ['src/web/a.tsx', "import { open } from '#store/workshop.ts'", /web may not know store/],
    ['src/craft/a.ts', "import bib from '../../docs/references.bib?raw'", /no layer of src/],
    ['src/server/a.ts', "import { main } from '#cli/main.ts'", /server may not know cli/],
    ['src/stove/a.ts', "import rows from '#reference/can-sizes.json'", /no layer of src/],
    ['src/stove/a.ts', "import { sample } from '../../test/stove/sample.ts'", /no layer of src/],
    ['src/kitchen/a.ts', '', /lies in no layer/],
    ['src/a.ts', '', /lies in no layer/],
    ['src/basis/a.ts', "import { readFileSync } from 'node:fs'", /a part of Node/],
    ['src/basis/a.ts', "import fs from 'fs/promises'", /a part of Node/],
    ['src/basis/a.ts', 'const a = (name: string) => import(name)', /only known when it runs/],
    ['src/basis/a.ts', 'const a = Math.random()', /uses Math\.random/],
    ['src/basis/a.ts', "const a = Math['random']()", /uses Math\.random/],
    ['src/basis/a.ts', 'const { sin, random } = Math', /uses Math\.random/],
    ['src/proof/a.ts', 'const a = Date.now()', /uses Date\.now/],
    ['src/proof/a.ts', 'const a = new Date()', /uses new Date\(\)/],
    ['src/proof/a.ts', 'const a = Date()', /uses Date\(\)/],
  ]
  it.each(refused)('refuses in %s: %s', (path, text, fault) => {
    expect(layerFaults(path, text)).toEqual([expect.stringMatching(fault)])
  })
})
