import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { orThrow } from '#basis/problem.ts'
import { solidKernel } from '#cli/solidKernel.ts'
import { deskPlate } from '#craft/section/deskPlate.ts'
import { narrowPlate } from '#craft/section/narrowPlate.ts'
import type { Plate, PlateInput } from '#craft/section/plate.ts'
import { darkTheme, lightTheme, type Theme } from '#craft/section/theme.ts'
import { DARK_THEME, PAPER_THEME } from '#craft/view/svg.ts'
import { predictSteady } from '#science/steady/predict.ts'
import type { Prediction } from '#science/steady/prediction.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import { solidsPicture } from './pictures/solids.ts'

const examples = join(import.meta.dirname, '..', 'examples')
export const PICTURES = join(import.meta.dirname, '..', 'docs', 'pictures')

const notesOf = ({ halfway, stops }: Prediction): readonly string[] => [
  'Cut down the centre line, true to scale; tin is drawn thicker than it is. Rows and floor holes are turned into the cut, and each side shows half of what flows.',
  `Air, heat and times are the model’s medians with the front ${Math.round(halfway.frontPosition * 100)} % of its way down, in calm air: a prediction, no measurement. The stove and its makers are invented.`,
  ...(stops === null ? [] : [stops.sentence]),
  'Wood gas contains carbon monoxide: burn outdoors only.',
]

const stoveOf = (example: string): Stove =>
  orThrow(readStove(readFileSync(join(examples, `${example}.stove.json`), 'utf8')))

const kernel = await solidKernel()

const inputOf = (example: string, theme: Theme): PlateInput => {
  const stove = stoveOf(example)
  const outcome = orThrow(predictSteady(stove))
  if (outcome.kind === 'no burn') throw new Error(`${example}: ${outcome.noBurn.sentence}`)
  const burn: Prediction = outcome.prediction
  return { stove, burn, theme, notes: notesOf(burn) }
}

/** File name of each picture, and what draws it. */
const plates: Readonly<Record<string, () => Pick<Plate, 'svg'>>> = {
  'section.svg': () => deskPlate(inputOf('redshank', lightTheme)),
  'section-dark.svg': () => deskPlate(inputOf('redshank', darkTheme)),
  'section-narrow.svg': () => narrowPlate(inputOf('redshank', lightTheme)),
  'section-narrow-dark.svg': () => narrowPlate(inputOf('redshank', darkTheme)),
  'section-greylag.svg': () => deskPlate(inputOf('greylag', lightTheme)),
  'section-heron.svg': () => deskPlate(inputOf('heron', lightTheme)),
  'solids.svg': () => ({ svg: solidsPicture(kernel, stoveOf('redshank'), PAPER_THEME) }),
  'solids-dark.svg': () => ({ svg: solidsPicture(kernel, stoveOf('redshank'), DARK_THEME) }),
}

export const pictureNames = Object.keys(plates)

/** A picture of `docs/pictures` made anew. */
export const picture = (name: string): string => {
  const make = plates[name]
  if (make === undefined) throw new Error(`No picture ${name}`)
  return make().svg
}

// Writes the pictures anew: `node scripts/pictures.ts`. A test says when that is due.
if (import.meta.main) {
  mkdirSync(PICTURES, { recursive: true })
  for (const name of pictureNames) {
    const path = join(PICTURES, name)
    writeFileSync(path, picture(name))
    console.log(path)
  }
}
