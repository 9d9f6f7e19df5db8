import { useId, useMemo, useState } from 'react'
import { type Problem, problemSentence } from '#basis/problem.ts'
import { NAMED_CANS } from '#stove/can/foodCans.ts'
import { readCanItem } from '#stove/document/shelfItem.ts'
import type { Can } from '#stove/model.ts'
import { useCell } from '../cell/useCell.ts'
import { lengthIn } from '../settings/inUnits.ts'
import { type Units, units } from '../settings/settings.ts'
import {
  type CanDraft,
  canValue,
  draftOf,
  EMPTY_CAN,
  END_KINDS,
  END_WORDS,
  type EndDraft,
  type EndKind,
  fieldOfProblem,
  hasOpening,
} from './canDraft.ts'
import { CanPicture, type Taken } from './canPicture.tsx'
import type { ShelfItem } from './items.ts'
import { addItem, changeItem } from './writes.ts'

interface FieldProps {
  readonly label: string
  readonly letter?: string
  readonly help: string
  readonly value: string
  readonly problems: readonly Problem[]
  readonly placeholder: string
  readonly list?: string
  readonly onChange: (value: string) => void
  readonly onFocus: () => void
}

const Field = ({
  label,
  letter,
  help,
  value,
  problems,
  placeholder,
  list,
  onChange,
  onFocus,
}: FieldProps) => {
  const id = useId()
  const wrong = problems.length > 0
  return (
    <div className="can-field">
      <label htmlFor={id}>
        {letter === undefined ? null : <span className="can-key">{letter}</span>} {label}
      </label>
      <input
        id={id}
        value={value}
        placeholder={placeholder}
        list={list}
        maxLength={60}
        autoComplete="off"
        aria-invalid={wrong}
        aria-describedby={`${id}-help`}
        onChange={(event) => onChange(event.target.value)}
        onFocus={onFocus}
      />
      <p id={`${id}-help`} className={wrong ? 'can-wrong' : 'muted small'}>
        {wrong
          ? problems
              .map(
                ({ value: said, allowed, fix }) =>
                  `${said === '' ? '' : `${said} will not do; `}${allowed}. ${fix}`,
              )
              .join(' ')
          : help}
      </p>
    </div>
  )
}

const EndField = ({
  which,
  end,
  problems,
  onChange,
  onTake,
}: {
  readonly which: 'top' | 'bottom'
  readonly end: EndDraft
  readonly problems: readonly Problem[]
  readonly onChange: (end: EndDraft) => void
  readonly onTake: (taken: Taken) => void
}) => {
  const id = useId()
  return (
    <>
      <div className="can-field">
        <label htmlFor={id}>{which === 'top' ? 'Top' : 'Bottom'}</label>
        <select
          id={id}
          value={end.end}
          onChange={(event) => onChange({ ...end, end: event.target.value as EndKind })}
        >
          {END_KINDS.filter((kind) => kind !== 'cut').map((kind) => (
            <option key={kind} value={kind}>
              {END_WORDS[kind]}
            </option>
          ))}
        </select>
      </div>
      {hasOpening(end.end) ? (
        <Field
          label="Its opening"
          letter="E"
          help="Across the hole, inside the ledge or ring."
          placeholder="64 mm"
          value={end.opening}
          problems={problems}
          onChange={(opening) => onChange({ ...end, opening })}
          onFocus={() => onTake(`${which}.opening`)}
        />
      ) : null}
    </>
  )
}

const sizeOf = ({ seamDiameter, bodyDiameter, height, bodyWall }: Can, inUnits: Units): string => {
  const long = (length: number): string => lengthIn(length, inUnits)
  return `Reads as ${long(seamDiameter.value)} over the seam, ${long(bodyDiameter.value)} at the wall, ${long(height.value)} high, tin ${long(bodyWall)} thick.`
}

/** A can by its size code, by what a tape and a calliper say, or by its code with what was measured put over it. */
export const CanForm = ({
  item,
  onDone,
}: {
  readonly item: ShelfItem | null
  readonly onDone: () => void
}) => {
  const [draft, setDraft] = useState<CanDraft>(() =>
    item === null ? EMPTY_CAN : draftOf(item.name, item.value),
  )
  const [taken, setTaken] = useState<Taken>(null)
  const [asked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  const codes = useId()
  const inUnits = useCell(units)
  const read = useMemo(() => readCanItem(canValue(draft), 'can'), [draft])
  const said = read.ok ? [] : read.problems
  const touched = Object.values(canValue(draft) as object).length > 0
  const of = (field: string): readonly Problem[] =>
    asked || touched ? said.filter((problem) => fieldOfProblem(problem.field) === field) : []
  const rest = said.filter(({ field }) => fieldOfProblem(field) === null)
  const set = (part: Partial<CanDraft>): void => setDraft((before) => ({ ...before, ...part }))
  const name = draft.name.trim()
  const named = NAMED_CANS.find(({ code }) => code === draft.code.trim())

  const keep = async (): Promise<void> => {
    setAsked(true)
    if (!read.ok || name === '') return
    setBusy(true)
    const value = canValue(draft)
    const done = item === null ? await addItem('can', name, value) : await changeItem(item, name, value)
    setBusy(false)
    if (done) onDone()
  }

  return (
    <form
      className="can-form"
      onSubmit={(event) => {
        event.preventDefault()
        void keep()
      }}
    >
      <div className="can-fields">
        <Field
          label="Your name for it"
          help="Letters, digits, spaces; it begins with a letter."
          placeholder="tomato can"
          value={draft.name}
          problems={
            asked && name === ''
              ? [
                  {
                    code: '',
                    field: '',
                    value: '',
                    allowed: 'A name is wanted',
                    fix: 'Say what you call it.',
                  },
                ]
              : []
          }
          onChange={(value) => set({ name: value })}
          onFocus={() => setTaken(null)}
        />
        <Field
          label="Size code, if you know it"
          help={
            named === undefined
              ? 'Two groups of three digits, inches and sixteenths: 404x700 is 4 4/16 in across and 7 in high.'
              : `${named.name}${named.fromMemory ? ', from memory' : ''}. What you measure below goes before the code.`
          }
          placeholder="404x700"
          list={codes}
          value={draft.code}
          problems={of('code')}
          onChange={(value) => set({ code: value })}
          onFocus={() => setTaken(null)}
        />
        <datalist id={codes}>
          {NAMED_CANS.map(({ code, name: trade }) => (
            <option key={`${code} ${trade}`} value={code}>
              {trade}
            </option>
          ))}
        </datalist>
        <Field
          label="Across, over the seam"
          letter="A"
          help="Calliper jaws on the rolled seam, the widest place."
          placeholder="87.3 mm"
          value={draft.seamDiameter}
          problems={of('seamDiameter')}
          onChange={(value) => set({ seamDiameter: value })}
          onFocus={() => setTaken('seamDiameter')}
        />
        <Field
          label="Across the plain wall"
          letter="B"
          help="Away from seams and beads. With a tape round it: “266 mm round”."
          placeholder="84.6 mm"
          value={draft.bodyDiameter}
          problems={of('bodyDiameter')}
          onChange={(value) => set({ bodyDiameter: value })}
          onFocus={() => setTaken('bodyDiameter')}
        />
        <Field
          label="Height"
          letter="C"
          help="Upright, over both seams."
          placeholder="115 mm"
          value={draft.height}
          problems={of('height')}
          onChange={(value) => set({ height: value })}
          onFocus={() => setTaken('height')}
        />
        <Field
          label="Thickness of the wall"
          letter="D"
          help="Fold a strip ten times and divide by ten. Left out: what such cans usually have."
          placeholder="0.2 mm"
          value={draft.bodyWall}
          problems={of('bodyWall')}
          onChange={(value) => set({ bodyWall: value })}
          onFocus={() => setTaken('bodyWall')}
        />
        <EndField
          which="top"
          end={draft.top}
          problems={of('top.opening')}
          onChange={(top) => set({ top })}
          onTake={setTaken}
        />
        <EndField
          which="bottom"
          end={draft.bottom}
          problems={of('bottom.opening')}
          onChange={(bottom) => set({ bottom })}
          onTake={setTaken}
        />
      </div>
      <div className="can-drawn">
        <CanPicture can={read.ok ? read.value : null} taken={taken} />
      </div>
      <div className="can-foot">
        <p aria-live="polite" className={read.ok ? 'small' : 'muted small'}>
          {read.ok
            ? sizeOf(read.value, inUnits)
            : rest.length > 0 && touched
              ? rest.map(problemSentence).join(' ')
              : 'Give its size code, or its height and one diameter.'}
        </p>
        <p className="muted small">
          Write lengths with their unit: “84.6 mm”, “3 5/16 in”, or “84.6 mm ± 0.3 mm” where you know how
          well.
        </p>
        <div className="shelf-buttons">
          <button type="submit" data-weight="main" disabled={busy}>
            {item === null ? 'Lay it on the shelf' : 'Keep the change'}
          </button>
          <button type="button" onClick={onDone}>
            Leave it
          </button>
        </div>
      </div>
    </form>
  )
}
