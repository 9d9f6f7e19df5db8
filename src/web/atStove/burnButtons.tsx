import type { EventKind } from '#proof/trial/logSchema.ts'
import { type BurnLog, type Entry, isWeighing, litAt, standing } from './entry.ts'
import type { Pad } from './pads.tsx'
import { whenText } from './runningTime.ts'

/** What a button notes at once, or the page it opens. */
export type Press = { readonly event: EventKind } | Pad | { readonly pad: 'photo' }

interface BigButton {
  readonly label: string
  readonly press: Press
  /** Which entries it made. */
  readonly made: (entry: Entry) => boolean
}

const at = (label: string, event: EventKind): BigButton => ({
  label,
  press: { event },
  made: (entry) => !isWeighing(entry) && entry.event === event,
})

const opens = (label: string, press: Press, made: (entry: Entry) => boolean): BigButton => ({
  label,
  press,
  made,
})

const happened =
  (event: EventKind) =>
  (entry: Entry): boolean =>
    !isWeighing(entry) && entry.event === event
const weighed =
  (of: 'fuel' | 'pot' | 'char') =>
  (entry: Entry): boolean =>
    isWeighing(entry) && entry.of === of

/** In the order of a burn, and always in the same place: the hand learns it. */
const BUTTONS: readonly BigButton[] = [
  at('Lit', 'lit'),
  at('Flame on', 'flame on'),
  at('Pot on', 'pot on'),
  at('Smoke', 'smoke'),
  at('Smoke gone', 'smoke gone'),
  at('Boil', 'boil'),
  opens('Damper to…', { pad: 'damper' }, happened('damper to')),
  opens('Refuel…', { pad: 'refuel' }, happened('refuel')),
  at('Pot off', 'pot off'),
  at('Flame out', 'flame out'),
  at('Char out', 'char out'),
  opens('Char weighed…', { pad: 'weigh', of: 'char' }, weighed('char')),
  opens('Weigh fuel…', { pad: 'weigh', of: 'fuel' }, weighed('fuel')),
  opens('Weigh pot…', { pad: 'weigh', of: 'pot' }, weighed('pot')),
  opens('Note…', { pad: 'note' }, happened('note')),
]

interface ButtonsProps {
  readonly log: BurnLog
  readonly onPress: (press: Press) => void
}

export const BurnButtons = ({ log, onPress }: ButtonsProps) => {
  const entries = standing(log)
  const lit = litAt(log)
  return (
    <div className="burn-buttons">
      {BUTTONS.map(({ label, press, made }) => {
        const last = entries.findLast(made)
        return (
          <button
            key={label}
            type="button"
            data-first={lit === null && label === 'Lit'}
            onClick={() => onPress(press)}
          >
            <span>{label}</span>
            {last !== undefined && lit !== null && <small>{whenText(Date.parse(last.at), lit)}</small>}
          </button>
        )
      })}
      <button type="button" className="burn-photo" onClick={() => onPress({ pad: 'photo' })}>
        <span>Photo</span>
      </button>
    </div>
  )
}
