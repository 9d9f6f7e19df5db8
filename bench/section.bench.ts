import { readFileSync } from 'node:fs'
import { orThrow } from '#basis/problem.ts'
import { drawPicture } from '#craft/section/picture.ts'
import { rememberPieces } from '#craft/section/rememberPieces.ts'
import { momentScene } from '#craft/section/scene.ts'
import { openSheet } from '#craft/section/sheet.ts'
import { lightTheme } from '#craft/section/theme.ts'
import { plainSetup } from '#science/answers/burn/setup.ts'
import { liveBurn } from '#science/answers/live/liveBurn.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStoveValue } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Stove } from '#stove/model.ts'
import { moveRow } from '#stove/moves/row.ts'
import { timing } from './measure.ts'
import type { Row, Rows } from './row.ts'

const read = (file: StoveFile): Stove => orThrow(readStoveValue(file as unknown as JsonValue)).stove

const RING = { part: 'fuel can', opening: 'ring' }
const PLACES = 15

/** What a frame of a gesture is made of, on one core: the stove read and checked, burnt, cut open, drawn. */
export const rows: Rows = async () => {
  const file = JSON.parse(
    readFileSync(new URL('../examples/greylag.stove.json', import.meta.url), 'utf8'),
  ) as StoveFile
  const stove = read(file)
  const files = Array.from({ length: PLACES }, (_, i) => {
    const move = moveRow(stove, file, RING, 0.12 + i / 1000)
    if (move === null) throw new Error('The ring of Greylag moves')
    return move.change(file)
  })
  const stoves = files.map(read)
  const burns = stoves.map((one) => orThrow(predictSteady(one)))
  const pieces = rememberPieces()
  const scenes = stoves.map((one, i) => {
    const burn = burns[i]
    return momentScene(one, burn?.kind === 'prediction' ? burn.prediction.halfway : null, { pieces })
  })
  let turn = 0
  const next = <T>(list: readonly T[]): T => list[turn++ % PLACES] as T
  const draw = (): string => {
    const { section, air, state } = next(scenes)
    const sheet = openSheet(lightTheme)
    drawPicture(sheet, { axis: 400, ground: 700, scale: 2 }, section, air, state)
    return sheet.body()
  }
  const measured: Row[] = []
  const measure = async (name: string, work: () => unknown): Promise<void> => {
    const { median } = await timing(work)
    measured.push({ name: `greylag under the hand: ${name}`, value: median * 1000, unit: 'ms', bar: null })
  }
  await measure('read', () => read(next(files)))
  await measure('check', () => checkStove(next(stoves), null))
  await measure('steady burn', () => predictSteady(next(stoves)))
  await measure('whole burn with a pot and its moments', () => liveBurn(plainSetup(next(stoves))))
  await measure('cut open with its air, pieces of fuel laid before', () => {
    const i = turn++ % PLACES
    const burn = burns[i]
    return momentScene(stoves[i] as Stove, burn?.kind === 'prediction' ? burn.prediction.halfway : null, {
      pieces,
    })
  })
  await measure('drawn', draw)
  return measured
}
