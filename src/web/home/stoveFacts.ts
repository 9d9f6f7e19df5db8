import { darkTheme, lightTheme } from '#craft/section/theme.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { readStove } from '#stove/document/read.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { workshop } from '../workshop/workshop.ts'
import { smallSection } from './smallSection.ts'

/** What the list says of a stove, worked out from its revision. */
export interface StoveFacts {
  readonly about: string
  /** What was changed last, and when. */
  readonly note: string
  readonly changed: string
  /** Addresses of its picture, by look. */
  readonly pictures: Readonly<Record<'light' | 'dark', string>> | null
}

const facts = new Map<string, Cell<StoveFacts | null>>()

const pictureOf = (svg: string): string => URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))

const work = async (revision: string): Promise<StoveFacts | null> => {
  const answer = await workshop.revision(revision)
  if (!answer.ok) return null
  const { text, note, created: changed } = answer.value
  const read = readStove(text)
  if (!read.ok) return { about: '', note, changed, pictures: null }
  const stove = read.value
  const predicted = predictSteady(stove)
  const burn = predicted.ok && predicted.value.kind === 'prediction' ? predicted.value.prediction : null
  const pictures = {
    light: pictureOf(smallSection(stove, burn, lightTheme)),
    dark: pictureOf(smallSection(stove, burn, darkTheme)),
  }
  return { about: stove.about, note, changed, pictures }
}

// One after the other, with a breath between: a long list must not hold up the page.
let queue: Promise<unknown> = Promise.resolve()
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))

/** Of the revision that counts; null until they are worked out. */
export const stoveFacts = (revision: string): Cell<StoveFacts | null> => {
  const known = facts.get(revision)
  if (known !== undefined) return known
  const cell = createCell<StoveFacts | null>(null)
  facts.set(revision, cell)
  queue = queue.then(breath).then(async () => {
    const found = await work(revision)
    if (found === null) facts.delete(revision)
    cell.set(found)
  })
  return cell
}
