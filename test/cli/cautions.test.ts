import { describe, expect, it } from 'vitest'
import { cautionBlock, withoutCautions } from '#compose/page/cautions.ts'
import { exampleFiles, exampleStoves, flat, tinwright } from './memory.ts'
import { spoiltStoves } from './spoilt.ts'

/**
 * What has to travel with every page that tells someone to cut, build or burn, each by the words that carry it. Written
 * down here once more on purpose: a caution that falls out of the list of cautions is missed here.
 */
const CAUTIONS: Readonly<Record<string, RegExp>> = {
  'carbon monoxide': /carbon monoxide/i,
  'outdoors only': /burn outdoors only/i,
  'never in a tent, shelter or vehicle': /never in a tent, shelter or vehicle/i,
  'char gives it off long after the flame': /char long after the flame/i,
  'drown it': /drown it/i,
  'never galvanised': /never galvanised/i,
  'burn off coatings': /burn off paint, lacquer and can liners outdoors, upwind, before any food use/i,
  'old paint may hold lead': /may hold lead/i,
  gloves: /gloves/i,
  'eye protection': /eye protection/i,
  clamp: /clamp before drilling/i,
  deburr: /deburr/i,
  'outer surfaces burn skin': /outer surfaces burn skin/i,
  'level mineral ground': /level mineral ground/i,
  'water or sand at hand': /water or sand at hand/i,
  'fire bans': /fire bans/i,
  'dry, untreated wood': /dry, untreated wood/i,
  'not an approval': /not an approval/i,
  'permit, licensed person, local code': /permit, a licensed person or a local code/i,
}

const missing = (text: string): readonly string[] =>
  Object.entries(CAUTIONS)
    .filter(([, words]) => !words.test(text))
    .map(([name]) => name)

const files = { ...exampleFiles, ...spoiltStoves }
const stoves = [...exampleStoves, ...Object.keys(spoiltStoves)]

const commands = [
  ['check'],
  ['predict'],
  ['burn', '--bands', '0'],
  ['templates'],
  ['solids'],
  ['guides'],
  ['cards', '--bands', '0', '--as', 'svg', '--shape', 'wide'],
  ['shop'],
  ['steps'],
  ['sheets'],
]

describe.each(commands)('tinwright %s', (command = '', ...options) => {
  it.each(stoves)('carries every caution with %s', async (file) => {
    const { out } = await tinwright([command, file, ...options], files)
    expect(missing(flat(out))).toEqual([])
  })

  it.each(stoves)('ends with them, so that who shows several pages of %s can say them once', async (file) => {
    const { out } = await tinwright([command, file, ...options], files)
    const rest = withoutCautions(out)
    expect(`${rest}\n${cautionBlock(80)}\n`).toBe(out)
    expect(rest).not.toContain('Before you cut')
  })

  it.each(stoves)('carries every caution with %s in JSON', async (file) => {
    const { out } = await tinwright([command, file, ...options, '--json'], files)
    const { cautions } = JSON.parse(out) as { readonly cautions: readonly string[] }
    expect(missing(cautions.join(' '))).toEqual([])
  })
})
