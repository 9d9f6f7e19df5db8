import { newId } from '../workshop/names.ts'
import { newAct, workshop } from '../workshop/workshop.ts'

/** Our own invented series (examples/series): six stoves, four burns of each. Fetched when somebody asks for it. */
const files = import.meta.glob<string>('../../../examples/series/*.json', {
  query: '?raw',
  import: 'default',
})

const nameOf = (path: string): string => path.split('/').at(-1) ?? path

interface Told {
  readonly name: string
  readonly stove?: { readonly file?: string; readonly variant?: string }
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
      note: 'Invented: of the series that shows how burns are compared.',
      ...about,
    },
  })
  await sent.safe
  return laid
}

/** Lays the stoves and burns of the series into the workshop; gives the first stove. */
export const layInSeries = async (): Promise<string> => {
  const paths = Object.keys(files).sort()
  const text = (path: string): Promise<string> => (files[path] as () => Promise<string>)()
  const stoves = new Map<string, Laid>()
  let first: Laid | null = null
  for (const path of paths.filter((one) => one.endsWith('.stove.json'))) {
    const said = await text(path)
    const laid: Laid = await layIn(
      'stove',
      (JSON.parse(said) as Told).name,
      said,
      first === null ? {} : { parents: [first.revision] },
    )
    first ??= laid
    stoves.set(nameOf(path), laid)
  }
  for (const path of paths.filter((one) => one.endsWith('.trial.json'))) {
    const said = await text(path)
    const told = JSON.parse(said) as Told
    const stove = stoves.get(told.stove?.file ?? '')
    if (stove === undefined) throw new Error(`The series has no stove for ${path}`)
    await layIn('trial', `${told.name} (${told.stove?.variant ?? ''})`.slice(0, 120), said, {
      aboutDocument: stove.document,
      aboutRevision: stove.revision,
    })
  }
  if (first === null) throw new Error('The series is not part of this bench')
  return first.document
}
