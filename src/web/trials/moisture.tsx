import { useState } from 'react'
import { readQuantity } from '#basis/text/read.ts'
import { at } from './draft.ts'
import { FieldRow, type FormProps } from './fieldRow.tsx'

const BEFORE = ['fuel', 'moisture', 'before'] as const
const AFTER = ['fuel', 'moisture', 'after'] as const
const METER = ['fuel', 'moisture', 'meter'] as const
const METER_ACCURACY = ['instruments', 'moistureMeter', 'accuracy'] as const

/** The oven-dry method as a maker does it: common practice, no source beyond the 105 °C of the trial file. */
const OVEN_STEPS = [
  'Take a handful of the fuel you burn, from the middle of the sack, and weigh it at once: 50 g or more.',
  'Oven at 105 °C (221 °F), door ajar, the fuel spread in a tin. Stay near: above 110 °C (230 °F) wood begins to lose more than water.',
  'Weigh again after 6 h, and every hour after: dry is when an hour takes no more weight off than the scale shows.',
  'Write down the last weight while it is still warm: dry wood drinks from the air.',
] as const

const weight = (form: FormProps, path: readonly string[]): number | null => {
  const read = readQuantity(at(form.draft, path), '', 'fuelWeight')
  return read.ok ? read.value : null
}

/** What the two weights say, as soon as both are there. */
const Result = (form: FormProps) => {
  const [before, after] = [weight(form, BEFORE), weight(form, AFTER)]
  if (before === null || after === null || after > before || before === 0) return null
  return (
    <p role="status">
      Moisture, wet basis: {((100 * (before - after)) / before).toFixed(1)} % (water lost over weight before
      drying).
    </p>
  )
}

export const Moisture = (form: FormProps) => {
  const told =
    at(form.draft, METER) !== undefined
      ? 'meter'
      : at(form.draft, BEFORE) !== undefined || at(form.draft, AFTER) !== undefined
        ? 'oven'
        : null
  const [wanted, setWanted] = useState<'oven' | 'meter'>('oven')
  const way = told ?? wanted
  const choose = (next: 'oven' | 'meter'): void => {
    if (next === way) return
    for (const path of [BEFORE, AFTER, METER]) form.onChange(path, undefined)
    if (next === 'oven') form.onChange(['instruments', 'moistureMeter'], undefined)
    setWanted(next)
  }
  return (
    <fieldset className="trial-choice">
      <legend>Moisture</legend>
      <label>
        <input type="radio" name="moisture" checked={way === 'oven'} onChange={() => choose('oven')} />
        dried in an oven
      </label>
      <label>
        <input type="radio" name="moisture" checked={way === 'meter'} onChange={() => choose('meter')} />
        read from a meter
      </label>
      {way === 'oven' ? (
        <>
          <details>
            <summary>How to dry a sample, step by step</summary>
            <ol className="trial-steps">
              {OVEN_STEPS.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          </details>
          <FieldRow
            field={{ path: BEFORE, label: 'Sample before drying', example: '60 g or 2.1 oz' }}
            {...form}
          />
          <FieldRow
            field={{ path: AFTER, label: 'Sample after drying', example: '54 g or 1.9 oz' }}
            {...form}
          />
          <Result {...form} />
        </>
      ) : (
        <>
          <FieldRow
            field={{
              path: METER,
              label: 'Meter shows',
              how: 'Wet basis. Many meters show the dry basis d: write d / (1 + d), so 12 % dry is 10.7 % wet.',
              example: '10 %',
            }}
            {...form}
          />
          <FieldRow
            field={{ path: METER_ACCURACY, label: 'Meter may be off by', example: '2 %' }}
            {...form}
          />
        </>
      )}
    </fieldset>
  )
}
