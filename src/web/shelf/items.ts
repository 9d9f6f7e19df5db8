import { type JsonValue, readJson } from '#stove/document/json.ts'
import type { ShelfKind } from '#stove/document/shelfItem.ts'
import type { DocumentHead } from '#wire/documents.ts'
import { SHELF_KINDS } from '#wire/kinds.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { documents, documentsFrom, workshop } from '../workshop/workshop.ts'

/** One thing on the shelf as the workshop keeps it. */
export interface ShelfItem {
  /** Of its document. */
  readonly id: string
  readonly kind: ShelfKind
  readonly name: string
  readonly head: DocumentHead
  /** What stands in it; null where it does not even read as JSON. */
  readonly value: JsonValue | null
  /** Exactly as kept. */
  readonly text: string
}

export interface ShelfItems {
  readonly loading: boolean
  readonly items: readonly ShelfItem[]
  /** Things that could not be fetched, in a sentence; null: all are there. */
  readonly sentence: string | null
}

const isShelf = ({ kind }: DocumentHead): boolean => (SHELF_KINDS as readonly string[]).includes(kind)

/** Texts by revision: a revision never changes. */
const texts = new Map<string, string>()
const cell = createCell<ShelfItems>({ loading: true, items: [], sentence: null })

const itemOf = (head: DocumentHead, text: string): ShelfItem => {
  const value = readJson(text)
  return {
    id: head.id,
    kind: head.kind as ShelfKind,
    name: head.name,
    head,
    value: value.ok ? value.value : null,
    text,
  }
}

const show = (heads: readonly DocumentHead[], loading: boolean, sentence: string | null): void =>
  cell.set({
    loading,
    sentence,
    items: heads.flatMap((head) => {
      const text = texts.get(head.head)
      return text === undefined ? [] : [itemOf(head, text)]
    }),
  })

let round = 0

const fetchMissing = async (): Promise<void> => {
  round += 1
  const mine = round
  const heads = documents.get().filter(isShelf)
  const looking = documentsFrom.get() === 'looking'
  const missing = heads.filter(({ head }) => !texts.has(head))
  if (missing.length === 0) {
    show(heads, looking, null)
    return
  }
  const answers = await Promise.all(missing.map(({ head }) => workshop.revision(head)))
  for (const [i, answer] of answers.entries())
    if (answer.ok) texts.set((missing[i] as DocumentHead).head, answer.value.text)
  if (mine !== round) return
  const refusal = answers.find((answer) => !answer.ok)
  show(heads, looking, refusal === undefined || refusal.ok ? null : refusal.refusal.sentence)
}

let watching = false

const watch = (): void => {
  if (watching) return
  watching = true
  documents.subscribe(() => void fetchMissing())
  documentsFrom.subscribe(() => void fetchMissing())
  void fetchMissing()
}

/** Everything on the shelf; fetched when somebody first looks. */
export const shelfItems: Cell<ShelfItems> = {
  get: () => {
    watch()
    return cell.get()
  },
  subscribe: (listener) => {
    watch()
    return cell.subscribe(listener)
  },
}
