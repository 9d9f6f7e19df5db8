import { useState } from 'react'
import { readQuantity } from '#basis/text/read.ts'
import type { Alignment } from '#proof/logger/align.ts'
import type { Channel } from '#proof/logger/readLog.ts'
import { at, changed, type Draft } from '../draft.ts'
import { loggerTime, readingAt } from './curves.ts'

const SIDES = ['from', 'to'] as const

interface Taken {
  readonly path: readonly (string | number)[]
  readonly text: string
}

/** Temperatures of a channel at both ends of every phase whose times are told. */
const takenFrom = (channel: Channel, alignment: Alignment, draft: Draft): readonly Taken[] => {
  const phases = at(draft, ['phases'])
  const count = Array.isArray(phases) ? phases.length : 0
  return Array.from({ length: count }, (_, index) => index).flatMap((index) =>
    SIDES.flatMap((side) => {
      const time = readQuantity(at(draft, ['phases', index, side, 'at']), '', 'timeAfterLighting')
      const value = time.ok ? readingAt(channel, loggerTime(alignment, time.value)) : null
      return value === null
        ? []
        : [{ path: ['phases', index, side, 'water'], text: `${(value - 273.15).toFixed(1)} °C` }]
    }),
  )
}

/** Puts the water's temperature from the logger into the phases. */
export const TakeWater = ({
  channels,
  alignment,
  draft,
  onDraft,
}: {
  readonly channels: readonly Channel[]
  readonly alignment: Alignment
  readonly draft: Draft
  readonly onDraft: (change: (now: Draft) => Draft) => void
}) => {
  const warm = channels.filter(({ quantity, time }) => quantity === 'temperature' && time.length > 0)
  const [name, setName] = useState('')
  const [said, setSaid] = useState<string | null>(null)
  // Which of several is the water is for the maker to say: the first may well stand in the flue.
  const channel = warm.find((one) => one.name === name) ?? (warm.length === 1 ? warm[0] : undefined)
  if (warm.length === 0) return null
  const take = (): void => {
    if (channel === undefined) return
    const taken = takenFrom(channel, alignment, draft)
    setSaid(
      taken.length === 0
        ? 'No phase has a time that the logger covers: say when they began and ended first.'
        : `Taken: ${taken.map(({ text }) => text).join(', ')}.`,
    )
    onDraft((now) => taken.reduce((draftNow, { path, text }) => changed(draftNow, path, text), now))
  }
  return (
    <section aria-label="Water temperatures from the logger">
      <h3>Water temperatures for the phases</h3>
      <div className="log-add">
        <label>
          From
          <select value={channel?.name ?? ''} onChange={(event) => setName(event.target.value)}>
            {channel === undefined && <option value="">which is the water?</option>}
            {warm.map((one) => (
              <option key={one.name}>{one.name}</option>
            ))}
          </select>
        </label>
        <button type="button" disabled={channel === undefined} onClick={take}>
          Take them at both ends of each phase
        </button>
      </div>
      <p role="status">{said}</p>
    </section>
  )
}
