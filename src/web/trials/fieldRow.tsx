import { useId } from 'react'
import type { Problem } from '#basis/problem.ts'
import { at, type Draft, fieldOf, type Path } from './draft.ts'
import type { TrialField } from './fields.ts'

/** What a form shows, and what it changes. */
export interface FormProps {
  readonly draft: Draft
  readonly wrong: readonly Problem[]
  readonly onChange: (path: Path, value: string | number | boolean | undefined) => void
}

/** What is wrong with one blank, as a sentence; null: nothing. */
export const faultAt = (wrong: readonly Problem[], path: Path): string | null => {
  const found = wrong.find(({ field }) => field === fieldOf(path))
  return found === undefined ? null : `Allowed is ${found.allowed}. ${found.fix}`
}

const shownValue = (draft: Draft, path: Path): string => {
  const value = at(draft, path)
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}

/** What a blank's text means to the file: nothing, a whole number where one is wanted, the text as written. */
const meant = (text: string, kind: TrialField['kind']): string | number | undefined => {
  if (text.trim() === '') return undefined
  return kind === 'whole' && /^\d+$/.test(text.trim()) ? Number(text) : text
}

export const FieldRow = ({ field, draft, wrong, onChange }: FormProps & { readonly field: TrialField }) => {
  const id = useId()
  const { path, label, how, example, kind = 'text', choices, optional } = field
  const fault = faultAt(wrong, path)
  const value = shownValue(draft, path)
  const common = {
    id,
    value,
    'aria-invalid': fault !== null,
    'aria-describedby': `${id}-how`,
  }
  const blank =
    choices !== undefined ? (
      <select {...common} onChange={(event) => onChange(path, meant(event.target.value, kind))}>
        <option value="">choose …</option>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    ) : kind === 'long' ? (
      <textarea
        {...common}
        rows={3}
        placeholder=" "
        onChange={(event) => onChange(path, meant(event.target.value, kind))}
      />
    ) : (
      <input
        {...common}
        type={kind === 'day' ? 'date' : 'text'}
        inputMode={kind === 'whole' ? 'numeric' : undefined}
        // Empty blanks are known by it on paper.
        placeholder={example ?? ' '}
        onChange={(event) => onChange(path, meant(event.target.value, kind))}
      />
    )
  return (
    <div className="trial-field">
      <label htmlFor={id}>
        {label}
        {optional === true && <span className="muted small"> may be left empty</span>}
      </label>
      {blank}
      <p id={`${id}-how`} className="small" data-fault={fault !== null}>
        {fault ?? how}
      </p>
    </div>
  )
}
