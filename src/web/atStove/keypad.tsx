import { type FormEvent, type KeyboardEvent, type ReactNode, useState } from 'react'
import { buzz } from './device.ts'
import { type Key, pressed, typed } from './keypadText.ts'

const ROWS: readonly (readonly Key[])[] = [
  ['7', '8', '9'],
  ['4', '5', '6'],
  ['1', '2', '3'],
  ['.', '0', 'back'],
]

const KEYS = new Set<string>(ROWS.flat())

interface KeypadProps {
  readonly title: string
  /** Behind the number. */
  readonly units: readonly string[]
  readonly unit: string
  readonly onUnit?: (unit: string) => void
  readonly first?: string
  /** What the button says. */
  readonly done: string
  readonly onDone: (text: string) => void
  readonly children?: ReactNode
}

/** A number by large keys of our own: the phone's keyboard is too small for gloves and hides half the page. */
export const Keypad = ({ title, units, unit, onUnit, first = '', done, onDone, children }: KeypadProps) => {
  const [text, setText] = useState(first)
  const press = (key: Key): void => {
    buzz(12)
    setText((now) => pressed(now, key))
  }
  const number = typed(text)
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    if (number !== null) onDone(number)
  }
  const key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const pressedKey = event.key === 'Backspace' ? 'back' : event.key === ',' ? '.' : event.key
    if (!KEYS.has(pressedKey)) return
    event.preventDefault()
    press(pressedKey as Key)
  }
  return (
    <form className="keypad" onSubmit={submit} onKeyDown={key} aria-label={title}>
      <p className="keypad-shown">
        <output aria-label={`${title}, in ${unit}`}>{text === '' ? '–' : text}</output>{' '}
        {units.length === 1 ? (
          <span>{unit}</span>
        ) : (
          <span className="keypad-units">
            {units.map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={one === unit}
                aria-label={`in ${one}`}
                onClick={() => onUnit?.(one)}
              >
                {one}
              </button>
            ))}
          </span>
        )}
      </p>
      {children}
      <div className="keypad-keys">
        {ROWS.flat().map((one) => (
          <button
            key={one}
            type="button"
            onClick={() => press(one)}
            aria-label={one === 'back' ? 'last figure away' : one === '.' ? 'point' : one}
          >
            {one === 'back' ? '⌫' : one}
          </button>
        ))}
      </div>
      <button type="submit" className="burn-wide" data-weight="main" disabled={number === null}>
        {done}
      </button>
    </form>
  )
}
