import { type FormEvent, useState } from 'react'
import type { WEIGHED, WeighingFile } from '#proof/trial/logSchema.ts'
import { remember, remembered } from './device.ts'
import type { EntryWords } from './entry.ts'
import { Keypad } from './keypad.tsx'

type Weighed = (typeof WEIGHED)[number]

/** A page of its own for what a button alone does not say. */
export type Pad =
  | { readonly pad: 'weigh'; readonly of: Weighed }
  | { readonly pad: 'refuel' }
  | { readonly pad: 'damper' }
  | { readonly pad: 'note' }

export interface PadProps {
  readonly onDone: (words: EntryWords) => void
}

const MASS_UNITS = ['g', 'oz'] as const
const MASS_KEY = 'tinwright.scale-unit'

/** The unit of the scale at hand, remembered. */
const useMassUnit = (): readonly [string, (unit: string) => void] => {
  const [unit, setUnit] = useState(() => (remembered(MASS_KEY, 'g') === 'oz' ? 'oz' : 'g'))
  return [
    unit,
    (next) => {
      remember(MASS_KEY, next)
      setUnit(next)
    },
  ]
}

const WEIGH_WORDS: Readonly<Record<Weighed, { readonly title: string; readonly how: string }>> = {
  fuel: { title: 'Fuel not yet burnt', how: 'Vessel taken off.' },
  pot: { title: 'Pot with water', how: 'As it stands on the stove; lid on the scale or not throughout.' },
  char: { title: 'Char', how: 'Cold or smothered; vessel taken off, ash knocked off.' },
  stove: { title: 'Whole stove', how: 'With what is in it.' },
}

const WEIGHED_ORDER: readonly Weighed[] = ['fuel', 'pot', 'char', 'stove']

const WeighPad = ({ of: first, onDone }: PadProps & { readonly of: Weighed }) => {
  const [unit, setUnit] = useMassUnit()
  const [of, setOf] = useState(first)
  return (
    <>
      <h2 id="burn-pad">{WEIGH_WORDS[of].title}</h2>
      <div className="pad-choice">
        {WEIGHED_ORDER.map((one) => (
          <button key={one} type="button" aria-pressed={one === of} onClick={() => setOf(one)}>
            {one === 'stove' ? 'stove' : one}
          </button>
        ))}
      </div>
      <Keypad
        title={WEIGH_WORDS[of].title}
        units={MASS_UNITS}
        unit={unit}
        onUnit={setUnit}
        done="Weighed"
        onDone={(text) => onDone({ of, mass: `${text} ${unit}` } satisfies Omit<WeighingFile, 'id' | 'at'>)}
      >
        <p className="muted small">{WEIGH_WORDS[of].how}</p>
      </Keypad>
    </>
  )
}

const RefuelPad = ({ onDone }: PadProps) => {
  const [unit, setUnit] = useMassUnit()
  return (
    <>
      <h2 id="burn-pad">Fuel put in</h2>
      <Keypad
        title="Fuel put in"
        units={MASS_UNITS}
        unit={unit}
        onUnit={setUnit}
        done="Put in"
        onDone={(text) => onDone({ event: 'refuel', weight: `${text} ${unit}` })}
      />
    </>
  )
}

const DamperPad = ({ onDone }: PadProps) => (
  <>
    <h2 id="burn-pad">Damper to</h2>
    <Keypad
      title="Damper to"
      units={['°']}
      unit="°"
      done="Turned"
      onDone={(text) => onDone({ event: 'damper to', turned: `${text} deg` })}
    >
      <p className="muted small">
        Where its mark stands now, clockwise from the front of the stove, seen from above.
      </p>
    </Keypad>
  </>
)

/** What is noted most; a tap instead of a sentence typed in gloves. */
const COMMON_NOTES = ['gust of wind', 'sparks', 'flame lifts off', 'soot on the pot', 'stirred', 'spilled']

const NotePad = ({ onDone }: PadProps) => {
  const [text, setText] = useState('')
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    if (text.trim() !== '') onDone({ event: 'note', text: text.trim() })
  }
  return (
    <form onSubmit={submit} className="pad-note">
      <h2 id="burn-pad">Note</h2>
      <div className="pad-choice pad-notes">
        {COMMON_NOTES.map((one) => (
          <button key={one} type="button" onClick={() => onDone({ event: 'note', text: one })}>
            {one}
          </button>
        ))}
      </div>
      <label>
        In your own words
        <textarea rows={3} maxLength={1000} value={text} onChange={(event) => setText(event.target.value)} />
      </label>
      <button type="submit" className="burn-wide" data-weight="main" disabled={text.trim() === ''}>
        Note it
      </button>
    </form>
  )
}

export const PadBody = ({ pad, onDone }: PadProps & { readonly pad: Pad }) => {
  switch (pad.pad) {
    case 'weigh':
      return <WeighPad of={pad.of} onDone={onDone} />
    case 'refuel':
      return <RefuelPad onDone={onDone} />
    case 'damper':
      return <DamperPad onDone={onDone} />
    case 'note':
      return <NotePad onDone={onDone} />
  }
}
