import type { RevisionHead } from '#wire/documents.ts'
import { newId } from '../workshop/names.ts'
import { newAct, workshop } from '../workshop/workshop.ts'
import type { KnownTrial } from './allTrials.ts'
import { at, changed, type Draft, emptyDraft, type Path, textOf } from './draft.ts'

/** What stays from one burn to the next unless somebody says otherwise. */
const STAYS: readonly Path[] = [
  ['fuel'],
  ['kindling'],
  ['weather', 'altitude'],
  ['pot'],
  ['instruments'],
  ['start'],
]

export interface NewTrial {
  readonly stove: { readonly document: string; readonly name: string }
  readonly revision: Pick<RevisionHead, 'id' | 'hash'>
  readonly variant: string
  readonly asBuilt: string
  /** The burn that fuel, pot and instruments are taken from; null: everything is asked anew. */
  readonly like: KnownTrial | null
  readonly place: number | null
  /** `2031-05-17` */
  readonly day: string
  readonly burnsBefore: number
}

/** The text that a new trial begins with. */
const beginning = (wanted: NewTrial): Draft => {
  const { stove, revision, variant, asBuilt, like, place, day, burnsBefore } = wanted
  const name = `${variant === '' ? stove.name : variant}, burn ${burnsBefore + 1}`.slice(0, 80)
  let draft: Draft = {
    ...emptyDraft(),
    name,
    day,
    ...(place === null ? {} : { place }),
    stove: {
      name: stove.name.slice(0, 80),
      ...(variant === '' ? {} : { variant }),
      ...(revision.hash === '' ? {} : { revision: revision.hash }),
      ...(asBuilt === '' ? {} : { asBuilt }),
    },
  }
  for (const path of like === null ? [] : STAYS) {
    const value = at(like?.draft, path)
    if (value !== undefined) draft = changed(draft, path, value)
  }
  return draft
}

/** Makes a trial in the workshop, or keeps it here until the workshop answers; gives its id. */
export const startTrial = async (wanted: NewTrial): Promise<string> => {
  const draft = beginning(wanted)
  const id = newId()
  const sent = workshop.write('create', {
    act: await newAct(),
    wanted: {
      id,
      kind: 'trial',
      name: String(draft.name),
      revision: newId(),
      text: textOf(draft),
      note: 'Trial begun',
      aboutDocument: wanted.stove.document,
      aboutRevision: wanted.revision.id,
    },
  })
  await sent.safe
  return id
}
