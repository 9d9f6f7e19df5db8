import { newId } from '../workshop/names.ts'
import { newAct, workshop } from '../workshop/workshop.ts'

/** Our own invented series (examples/series): six stoves, four burns of each. Fetched when somebody asks for it. */
const files = import.meta.glob<string>('../../../examples/series/*.json', {
  query: '?raw',
  import: 'default',
})

const nameOf = (path: string): string => path.split('/').at(-1) ?? path

/** What the files do not say themselves: `series.json`. */
interface Series {
  readonly stoves: readonly { readonly file: string; readonly from: string; readonly note: string }[]
  readonly trials: readonly string[]
}

interface Told {
  readonly name: string
  readonly stove?: { readonly file?: string }
}

/** The first of the series; the others descend from it. */
export const SERIES_BEGINS = 'Heron A, as planned'

interface Laid {
  readonly document: string
  readonly revision: string
}

const layIn = async (
  kind: 'stove' | 'trial',
  name: string,
  text: string,
  note: string,
  about: {
    readonly parents?: readonly string[]
    readonly aboutDocument?: string
    readonly aboutRevision?: string
  },
): Promise<Laid> => {
  const laid = { document: newId(), revision: newId() }
  const sent = workshop.write('create', {
    act: await newAct(),
    wanted: {
      id: laid.document,
      kind,
      name,
      revision: laid.revision,
      text,
      note,
      ...about,
    },
  })
  await sent.safe
  return laid
}

/** Lays the stoves and burns of the series into the workshop; gives the first stove. */
export const layInSeries = async (): Promise<string> => {
  const paths = new Map(Object.keys(files).map((path) => [nameOf(path), path]))
  const text = (name: string): Promise<string> => {
    const fetch = files[paths.get(name) ?? '']
    if (fetch === undefined) throw new Error(`${name} is not part of this bench`)
    return fetch()
  }
  const series = JSON.parse(await text('series.json')) as Series
  const laid = new Map<string, Laid>()
  for (const { file, from, note } of series.stoves) {
    const said = await text(file)
    // The first is made from a stove of the demo, which need not be here.
    const parent = laid.get(from)
    const about = parent === undefined ? {} : { parents: [parent.revision] }
    laid.set(file, await layIn('stove', (JSON.parse(said) as Told).name, said, note, about))
  }
  for (const file of series.trials) {
    const said = await text(file)
    const { name, stove: told } = JSON.parse(said) as Told
    const stove = laid.get(told?.file ?? '')
    if (stove === undefined) throw new Error(`The series has no stove for ${file}`)
    const about = { aboutDocument: stove.document, aboutRevision: stove.revision }
    await layIn('trial', name, said, `From the file ${file}.`, about)
  }
  const [first] = laid.values()
  if (first === undefined) throw new Error('The series is not part of this bench')
  return first.document
}
