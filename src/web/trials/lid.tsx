import { at } from './draft.ts'
import type { FormProps } from './fieldRow.tsx'

const CHOICES = [
  { value: true, label: 'on' },
  { value: false, label: 'off' },
] as const

/** Steam that drips back does not show on the scale, so it is asked, never taken for granted. */
export const Lid = ({ draft, onChange }: FormProps) => {
  const lid = at(draft, ['pot', 'lid'])
  return (
    <fieldset className="trial-choice">
      <legend>Lid</legend>
      {CHOICES.map(({ value, label }) => (
        <label key={label}>
          <input
            type="radio"
            name="lid"
            checked={lid === value}
            onChange={() => onChange(['pot', 'lid'], value)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  )
}
