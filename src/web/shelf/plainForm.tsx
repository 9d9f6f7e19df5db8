import { useId, useState } from 'react'
import { problemSentence } from '#basis/problem.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readShelfItem, type ShelfKind } from '#stove/document/shelfItem.ts'
import { fuelChoice, fuelChoices } from '../fuel/fuelChoices.ts'
import type { ShelfItem } from './items.ts'
import { addItem, changeItem } from './writes.ts'

type PlainKind = Exclude<ShelfKind, 'can'>

interface PlainDraft {
  readonly name: string
  /** The size of a bit, the steps of a step drill, a pot's diameter; of a fuel its moisture. */
  readonly size: string
  readonly fuel: string
}

type JsonObject = Readonly<Record<string, JsonValue>>

const objectOf = (value: JsonValue | null): JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as JsonObject) : {}

const draftFrom = (kind: PlainKind, item: ShelfItem | null): PlainDraft => {
  if (item === null) return { name: '', size: '', fuel: 'wood-chips' }
  const value = objectOf(item.value)
  const text = (key: string): string => (typeof value[key] === 'string' ? value[key] : '')
  switch (kind) {
    case 'bit':
      return {
        name: item.name,
        fuel: '',
        size:
          typeof item.value === 'string'
            ? item.value
            : Array.isArray(value.step)
              ? value.step.join(', ')
              : '',
      }
    case 'fuel':
      return { name: item.name, size: text('moisture'), fuel: text('kind') || 'wood-chips' }
    case 'pot':
      return { name: item.name, size: text('diameter'), fuel: '' }
  }
}

/** As it goes into a file; what the form does not show of a fuel stays as it was. */
const valueFrom = (kind: PlainKind, { size, fuel }: PlainDraft, item: ShelfItem | null): JsonValue => {
  const text = size.trim()
  switch (kind) {
    case 'bit': {
      const steps = text.split(/\s*[,;]\s*/).filter((step) => step !== '')
      return steps.length > 1 ? { step: steps } : text
    }
    case 'fuel': {
      const { moisture: _, kind: __, ...rest } = objectOf(item?.value ?? null)
      return { ...rest, ...('own' in rest ? {} : { kind: fuel }), ...(text === '' ? {} : { moisture: text }) }
    }
    case 'pot':
      return { diameter: text }
  }
}

const WORDS: Readonly<
  Record<PlainKind, { readonly label: string; readonly help: string; readonly example: string }>
> = {
  bit: {
    label: 'Its size, or the steps of a step drill',
    help: 'As the trade names it: 6 mm, 5/8 in, #7, letter E. Steps with commas between.',
    example: '6 mm',
  },
  fuel: {
    label: 'Moisture, if you know it',
    help: 'Of the fuel as it is burnt, wet basis; left out: as such fuel usually is.',
    example: '12 %',
  },
  pot: { label: 'Across its bottom, outside', help: 'With its unit.', example: '120 mm' },
}

const USUAL_NAME: Readonly<Record<PlainKind, string>> = { bit: '', fuel: '', pot: 'mug' }

/** A bit, a fuel or a pot. */
export const PlainForm = ({
  kind,
  item,
  onDone,
}: {
  readonly kind: PlainKind
  readonly item: ShelfItem | null
  readonly onDone: () => void
}) => {
  const [draft, setDraft] = useState(() => draftFrom(kind, item))
  const [busy, setBusy] = useState(false)
  const id = useId()
  const { label, help, example } = WORDS[kind]
  const value = valueFrom(kind, draft, item)
  const name =
    draft.name.trim() ||
    (kind === 'bit'
      ? typeof value === 'string'
        ? value
        : `step drill ${draft.size.split(',')[0]?.trim()} to ${draft.size.split(',').at(-1)?.trim()}`
      : kind === 'fuel'
        ? draft.fuel
        : USUAL_NAME[kind])
  const read = readShelfItem(kind, value, 'it')
  const empty = draft.size.trim() === '' && kind !== 'fuel'
  const keep = async (): Promise<void> => {
    if (!read.ok || name === '') return
    setBusy(true)
    const done = item === null ? await addItem(kind, name, value) : await changeItem(item, name, value)
    setBusy(false)
    if (done) onDone()
  }
  return (
    <form
      className="plain-form"
      onSubmit={(event) => {
        event.preventDefault()
        void keep()
      }}
    >
      {kind === 'fuel' ? (
        <label>
          Fuel
          <select
            value={draft.fuel}
            aria-describedby={`${id}-pieces`}
            onChange={(event) => setDraft({ ...draft, fuel: event.target.value })}
          >
            {fuelChoices.map(({ key, name: words }) => (
              <option key={key} value={key}>
                {words}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {kind === 'fuel' ? (
        <p id={`${id}-pieces`} className="muted small">
          {fuelChoice(draft.fuel)?.pieces ?? 'Pieces as its name says.'}
        </p>
      ) : null}
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={draft.size}
        placeholder={example}
        maxLength={400}
        autoComplete="off"
        aria-invalid={!read.ok && !empty}
        aria-describedby={`${id}-help`}
        onChange={(event) => setDraft({ ...draft, size: event.target.value })}
      />
      <p id={`${id}-help`} className={read.ok || empty ? 'muted small' : 'can-wrong'}>
        {read.ok || empty ? help : read.problems.map(problemSentence).join(' ')}
      </p>
      <label>
        Your name for it
        <input
          value={draft.name}
          placeholder={name}
          maxLength={40}
          autoComplete="off"
          onChange={(event) => setDraft({ ...draft, name: event.target.value })}
        />
      </label>
      <div className="shelf-buttons">
        <button type="submit" data-weight="main" disabled={busy || !read.ok || name === ''}>
          {item === null ? 'Lay it on the shelf' : 'Keep the change'}
        </button>
        <button type="button" onClick={onDone}>
          Leave it
        </button>
      </div>
    </form>
  )
}
