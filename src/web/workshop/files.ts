import type { Answer } from '#wire/answer.ts'
import type { ArchiveReport, ImportReport, NamedText } from '#wire/files.ts'
import { newAct, workshop } from './workshop.ts'

/** Gives the browser a file to save. */
const saveFile = (name: string, content: Blob): void => {
  const address = URL.createObjectURL(content)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // The browser has to have begun before the address ends.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

export const saveText = ({ name, text }: NamedText): void =>
  saveFile(name, new Blob([text], { type: 'application/json' }))

const names = (heads: readonly { readonly name: string }[]): string =>
  heads.map(({ name }) => `“${name}”`).join(', ')

const fileSentence = (file: string, { added, renewed, known, remarks }: ImportReport): string => {
  const parts = [
    added.length > 0 ? `new: ${names(added)}` : '',
    renewed.length > 0 ? `gone on: ${names(renewed)}` : '',
    known.length > 0 ? `here already: ${names(known)}` : '',
  ].filter((part) => part !== '')
  return [`${file}: ${parts.length === 0 ? 'nothing in it' : parts.join('; ')}.`, ...remarks].join(' ')
}

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`

const archiveSentence = (file: string, report: ArchiveReport): string => {
  const { added, renewed, kept, revisions, events, photos, apart, strange } = report
  const stayed = kept === 0 ? '' : `${kept} stayed as ${kept === 1 ? 'it was' : 'they were'}`
  const came = [
    many(revisions, 'revision', 'revisions'),
    many(events, 'trial entry', 'trial entries'),
    many(photos, 'photo', 'photos'),
  ].filter((count) => !count.startsWith('0 '))
  if (added + renewed + came.length + apart.length + strange.length === 0)
    return `${file}: all of it is here already, ${many(kept, 'thing', 'things')}; nothing was changed.`
  const parts = [
    [
      added === 0 ? '' : many(added, 'thing was new', 'things were new'),
      renewed === 0 ? '' : `${renewed} went on to a newer revision`,
      stayed,
    ]
      .filter((part) => part !== '')
      .join(', '),
    came.length === 0 ? '' : `${came.join(', ')} came in`,
    apart.length > 0 ? `went two ways, both kept: ${apart.join(', ')}` : '',
    strange.length > 0 ? `belongs to nothing, left out: ${strange.join(', ')}` : '',
  ].filter((part) => part !== '')
  return `${file}: ${parts.join('. ')}.`
}

export interface Brought {
  readonly ok: boolean
  readonly sentence: string
}

/** Most refusals begin with the file they are of. */
const refusedSentence = (file: string, sentence: string): string =>
  sentence.startsWith(file) ? sentence : `${file} was not brought in. ${sentence}`

const broughtFrom = <T>(file: File, answer: Answer<T>, sentence: (value: T) => string): Brought =>
  answer.ok
    ? { ok: true, sentence: sentence(answer.value) }
    : { ok: false, sentence: refusedSentence(file.name, answer.refusal.sentence) }

/** Two letters that every zip begins with. */
export const isZip = async (file: File): Promise<boolean> => (await file.slice(0, 2).text()) === 'PK'

/** As many bytes as a text may have characters, whatever they are. */
const MOST_TEXT = 4_000_000

/**
 * Brings a file of a stove, a shelf or a trial, or a whole archive, into the workshop, and says what came of it. `stove`: where
 * a trial belongs whose own words fit no stove here.
 */
export const bringIn = async (file: File, stove?: string): Promise<Brought> => {
  try {
    if (await isZip(file)) {
      const sent = workshop.upload('importArchive', { act: await newAct() }, file)
      return broughtFrom(file, await sent.answer, (report) => archiveSentence(file.name, report))
    }
    if (file.size > MOST_TEXT)
      return {
        ok: false,
        sentence: `${file.name} has ${(file.size / 1e6).toFixed(1)} MB and is no archive: no stove, shelf or trial file is as large. Nothing was changed.`,
      }
    const named = { name: file.name, text: await file.text() }
    const otherwise = stove === undefined ? {} : { stove }
    const sent = workshop.write('importFile', { act: await newAct(), file: named, ...otherwise })
    return broughtFrom(file, await sent.answer, (report) => fileSentence(file.name, report))
  } catch {
    return { ok: false, sentence: `${file.name} could not be read from its drive. Nothing was changed.` }
  }
}
