import { useState } from 'react'
import type { BurnLog } from '../atStove/entry.ts'
import { at, changed, type Draft, type Path } from './draft.ts'
import { FieldRow, type FormProps, faultAt } from './fieldRow.tsx'
import { phaseFromLog } from './phaseFromLog.ts'

interface PhaseProps extends FormProps {
  readonly log: BurnLog
  readonly onDraft: (change: (draft: Draft) => Draft) => void
}

const READINGS = [
  { key: 'at', label: 'Time after lighting', example: '7 min 12 s' },
  { key: 'fuel', label: 'Fuel not yet burnt', example: '310 g' },
  { key: 'pot', label: 'Pot with water', example: '1412 g' },
  { key: 'water', label: 'Water', example: '17.5 °C' },
] as const

const SIDES = [
  { key: 'from', label: 'at the start' },
  { key: 'to', label: 'at the end' },
] as const

const Cell = ({
  path,
  label,
  example,
  draft,
  wrong,
  onChange,
}: FormProps & { readonly path: Path; readonly label: string; readonly example: string }) => {
  const value = at(draft, path)
  const fault = faultAt(wrong, path)
  return (
    <>
      <input
        aria-label={label}
        aria-invalid={fault !== null}
        placeholder={example}
        value={typeof value === 'string' ? value : ''}
        onChange={(event) => onChange(path, event.target.value === '' ? undefined : event.target.value)}
      />
      {fault !== null && (
        <p className="small" data-fault>
          {fault}
        </p>
      )}
    </>
  )
}

const Phase = ({ index, ...props }: PhaseProps & { readonly index: number }) => {
  const { log, onDraft, ...form } = props
  const [said, setSaid] = useState<readonly string[]>([])
  const kind = at(form.draft, ['phases', index, 'phase']) === 'simmer' ? 'Simmer' : 'High power'
  const take = (): void => {
    const taken = phaseFromLog(form.draft, index, log)
    setSaid(taken.said.length === 0 ? ['Nothing was left to fill in.'] : taken.said)
    onDraft((now) => phaseFromLog(now, index, log).draft)
  }
  return (
    <section className="trial-phase" aria-label={kind}>
      <h3>{kind}</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">Read</th>
            {SIDES.map(({ key, label }) => (
              <th key={key} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {READINGS.map((reading) => (
            <tr key={reading.key}>
              <th scope="row">{reading.label}</th>
              {SIDES.map((side) => (
                <td key={side.key}>
                  <Cell
                    path={['phases', index, side.key, reading.key]}
                    label={`${kind}, ${reading.label} ${side.label}`}
                    example={reading.example}
                    {...form}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <FieldRow
        field={{
          path: ['phases', index, 'char'],
          label: 'Char made in this phase',
          how: 'Cold, ash knocked off, vessel taken off. Left empty: not weighed.',
          example: '31 g',
          optional: true,
        }}
        {...form}
      />
      <p className="trial-actions">
        <button type="button" onClick={take}>
          Take from the log
        </button>
        {index > 0 && (
          <button type="button" onClick={() => onDraft((now) => changed(now, ['phases', index], undefined))}>
            Take this phase out
          </button>
        )}
      </p>
      <div role="status">
        {said.length > 0 && (
          <ul className="small trial-said">
            {said.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </div>
    </section>
  )
}

/** Weights and temperatures at the two ends of each phase. */
export const PhaseForm = (props: PhaseProps) => {
  const phases = at(props.draft, ['phases'])
  const count = Array.isArray(phases) ? phases.length : 0
  return (
    <div className="trial-phases">
      {Array.from({ length: count }, (_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a phase is known by its place alone
        <Phase key={index} index={index} {...props} />
      ))}
      {count < 2 && (
        <button
          type="button"
          onClick={() =>
            props.onDraft((now) =>
              changed(now, ['phases', count], {
                phase: count === 0 ? 'high power' : 'simmer',
                from: {},
                to: {},
              }),
            )
          }
        >
          Add the simmer
        </button>
      )}
    </div>
  )
}
