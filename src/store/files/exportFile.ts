import { formatShelfFile } from '#stove/document/format.ts'
import { SHELF_FORMAT, type ShelfFile } from '#stove/document/shelf.ts'
import type { NamedText } from '#wire/files.ts'
import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { slug } from '../archive/names.ts'
import { documentRow, revisionRow, type Trx } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import { read } from '../engine/transaction.ts'
import type { Kind } from '../kinds.ts'
import { stoveTextUnder } from './stoveText.ts'
import { wholeTrial } from './wholeTrial.ts'

/** The revision that counts as written, a stove under the name it bears now, a trial with what was logged beside it. */
export const exportFile = (engine: Engine, document: string): Promise<Answer<NamedText>> =>
  read(engine, async (trx) => {
    const row = await documentRow(trx, document)
    const { kind, name, head } = row
    const written = kind === 'trial' ? await wholeTrial(trx, row) : (await revisionRow(trx, head)).text
    const text = kind === 'stove' && written !== null ? stoveTextUnder(name, written) : written
    if (text === null)
      return refuse('bad input', `“${name}” does not read as a trial. Mend it, or take it away.`)
    return { name: `${slug(name) || kind}.${kind}.json`, text }
  })

interface Item {
  readonly name: string
  readonly value: unknown
}

const itemsOf = async (trx: Trx, kind: Kind): Promise<readonly Item[]> => {
  const rows = await trx
    .selectFrom('documents')
    .select(['name', 'head'])
    .where('kind', '=', kind)
    .where('deleted', '=', 0)
    .orderBy('place')
    .execute()
  const items: Item[] = []
  for (const { name, head } of rows) {
    const { text } = await revisionRow(trx, head)
    try {
      items.push({ name, value: JSON.parse(text) })
    } catch {
      refuse('bad input', `The ${kind} “${name}” does not read as JSON. Mend it, or take it from the shelf.`)
    }
  }
  return items
}

/** Bits and cans as one shelf file; a second can of one name is numbered. */
export const exportShelf = (engine: Engine): Promise<Answer<NamedText>> =>
  read(engine, async (trx) => {
    const cans: Record<string, unknown> = {}
    for (const { name, value } of await itemsOf(trx, 'can')) {
      let key = name
      for (let n = 2; Object.hasOwn(cans, key); n++) key = `${name} ${n}`
      cans[key] = value
    }
    const bits = (await itemsOf(trx, 'bit')).map(({ value }) => value)
    const file = { format: SHELF_FORMAT, bits, cans } as unknown as ShelfFile
    return { name: 'shelf.json', text: formatShelfFile(file) }
  })
