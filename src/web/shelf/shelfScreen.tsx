import './shelf.css'
import { useMemo, useState } from 'react'
import type { ShelfKind } from '#stove/document/shelfItem.ts'
import { say } from '../bench/notices.ts'
import { SheetDialog } from '../bench/sheetDialog.tsx'
import { useCell } from '../cell/useCell.ts'
import { FileButton } from '../files/fileButton.tsx'
import { DropPlace } from '../home/bringFiles.tsx'
import { MakingCautions } from '../plan/cautions.tsx'
import type { Place } from '../routes/routes.ts'
import { units } from '../settings/settings.ts'
import { shelfCans } from '../startStove/shelfCans.ts'
import { bringIn, saveText } from '../workshop/files.ts'
import { workshop } from '../workshop/workshop.ts'
import { CanForm } from './canForm.tsx'
import { FitsTable } from './fitsTable.tsx'
import { lineOf } from './itemLine.ts'
import { type ShelfItem, shelfItems } from './items.ts'
import { PlainForm } from './plainForm.tsx'
import { PossibleStoves } from './possible.tsx'
import { shelfOf } from './shelfOf.ts'
import { removeItem } from './writes.ts'

interface GroupWords {
  readonly title: string
  readonly one: string
  readonly none: string
}

const WORDS: Readonly<Record<ShelfKind, GroupWords>> = {
  can: {
    title: 'Cans',
    one: 'can',
    none: 'No can yet. Measure one: a calliper and a tape are all it takes.',
  },
  bit: { title: 'Bits', one: 'bit', none: 'No bit yet. With your bits here, plans use what you own.' },
  fuel: {
    title: 'Fuels',
    one: 'fuel',
    none: 'No fuel yet. Weigh and dry a handful, and predictions are of yours.',
  },
  pot: { title: 'Pots', one: 'pot', none: 'No pot yet. Measure the mug or pot you cook in.' },
}

interface Editing {
  readonly kind: ShelfKind
  readonly item: ShelfItem | null
}

const Group = ({
  kind,
  items,
  onEdit,
}: {
  readonly kind: ShelfKind
  readonly items: readonly ShelfItem[]
  readonly onEdit: (editing: Editing) => void
}) => {
  const { title, one, none } = WORDS[kind]
  const inUnits = useCell(units)
  return (
    <section className="shelf-group" data-kind={kind} aria-labelledby={`shelf-${kind}`}>
      <header>
        <h2 id={`shelf-${kind}`}>{title}</h2>
        <button type="button" onClick={() => onEdit({ kind, item: null })}>
          Add a {one}
        </button>
      </header>
      {items.length === 0 ? <p className="muted">{none}</p> : null}
      <ul>
        {items.map((item) => {
          const { ok, words } = lineOf(item, inUnits)
          return (
            <li key={item.id} className="shelf-row">
              <span>
                <strong>{item.name}</strong> <span className={ok ? 'muted' : 'can-wrong'}>{words}</span>
              </span>
              <button type="button" aria-label={`Change ${item.name}`} onClick={() => onEdit({ kind, item })}>
                Change
              </button>
              <button
                type="button"
                aria-label={`Take away ${item.name}`}
                onClick={() => void removeItem(item)}
              >
                Take away
              </button>
            </li>
          )
        })}
      </ul>
    </section>
  )
}

const ShelfFiles = () => {
  const take = async (files: readonly File[]): Promise<void> => {
    for (const file of files) say((await bringIn(file)).sentence)
  }
  const give = async (): Promise<void> => {
    const answer = await workshop.ask('exportShelf', {})
    if (answer.ok) saveText(answer.value)
    else say(answer.refusal.sentence)
  }
  return (
    <div className="shelf-buttons">
      <FileButton
        name="Bring in a shelf file"
        field="Shelf file to bring in"
        accept=".json,application/json"
        onFiles={(files) => void take(files)}
      />
      <button type="button" onClick={() => void give()}>
        Save cans and bits as a file
      </button>
    </div>
  )
}

/** What a maker owns: cans, bits, fuels, pots; how the cans go together, and what could be made of them. */
export const ShelfScreen = (_: { readonly place: Extract<Place, { readonly at: 'shelf' }> }) => {
  const { items, loading, sentence } = useCell(shelfItems)
  const [editing, setEditing] = useState<Editing | null>(null)
  const shelf = useMemo(() => shelfOf(items), [items])
  const cans = useMemo(() => shelfCans(items), [items])
  const of = (kind: ShelfKind): readonly ShelfItem[] => items.filter((item) => item.kind === kind)
  const done = (): void => setEditing(null)
  return (
    <DropPlace>
      <div className="shelf">
        <header className="shelf-head">
          <h1>Shelf</h1>
          <ShelfFiles />
        </header>
        {sentence === null ? null : (
          <p className="can-wrong" role="alert">
            {sentence}
          </p>
        )}
        {loading && items.length === 0 ? (
          <p role="status" className="muted">
            Looking on the shelf …
          </p>
        ) : (
          <>
            <div className="shelf-groups">
              <Group kind="can" items={of('can')} onEdit={setEditing} />
              <div>
                <Group kind="bit" items={of('bit')} onEdit={setEditing} />
                <Group kind="pot" items={of('pot')} onEdit={setEditing} />
                <Group kind="fuel" items={of('fuel')} onEdit={setEditing} />
              </div>
            </div>
            <section aria-labelledby="shelf-fits">
              <h2 id="shelf-fits">How the cans go together</h2>
              {shelf.cans.size < 2 ? (
                <p className="muted">It takes two cans.</p>
              ) : (
                <FitsTable cans={shelf.cans} />
              )}
            </section>
            <PossibleStoves cans={cans} bits={shelf.bits} />
            <MakingCautions />
          </>
        )}
      </div>
      <SheetDialog
        title={
          editing === null
            ? ''
            : editing.item === null
              ? `Add a ${WORDS[editing.kind].one}`
              : `Change ${editing.item.name}`
        }
        open={editing !== null}
        onClose={done}
      >
        {editing === null ? null : editing.kind === 'can' ? (
          <CanForm item={editing.item} onDone={done} />
        ) : (
          <PlainForm kind={editing.kind} item={editing.item} onDone={done} />
        )}
      </SheetDialog>
    </DropPlace>
  )
}
