import { useMemo, useState } from 'react'
import type { Alignment } from '#proof/logger/align.ts'
import type { ChannelInspection } from '#proof/logger/inspect.ts'
import type { TimeMapping } from '#proof/logger/mapping.ts'
import { momentText } from '#proof/logger/moment.ts'
import type { Channel } from '#proof/logger/readLog.ts'
import { runningTime } from '../../atStove/runningTime.ts'
import { changed, type Draft } from '../draft.ts'
import { Wide } from '../wide.tsx'
import { massOffers, type Offer, type Offers, type Stood, waterOffers } from './readingOffers.ts'

const STOOD: readonly { readonly value: Stood; readonly label: string }[] = [
  { value: 'stove', label: 'the stove with its fuel, no pot' },
  { value: 'fuel', label: 'the fuel alone' },
  { value: 'pot', label: 'the pot with its water' },
]

const NONE: Offers = { offers: [], said: [] }

interface TakeProps {
  readonly channels: readonly Channel[]
  readonly inspections: readonly ChannelInspection[] | null
  readonly time: TimeMapping
  readonly alignment: Alignment
  /** Somebody brought the clocks together. */
  readonly together: boolean
  readonly draft: Draft
  readonly onDraft: (change: (now: Draft) => Draft) => void
}

const ChannelChoice = ({
  label,
  ask,
  channels,
  chosen,
  onChoose,
}: {
  readonly label: string
  readonly ask: string
  readonly channels: readonly Channel[]
  readonly chosen: Channel | undefined
  readonly onChoose: (name: string) => void
}) => (
  <label>
    {label}
    <select value={chosen?.name ?? ''} onChange={(event) => onChoose(event.target.value)}>
      {channels.length > 1 && <option value="">{ask}</option>}
      {channels.map(({ name }) => (
        <option key={name}>{name}</option>
      ))}
    </select>
  </label>
)

const pressWords = ({ now, text }: Offer): string =>
  now === null ? 'put it there' : now === text ? 'is there' : 'put it in its place'

/** Readings at both ends of every phase, each with the moment it was read, put into its blank by a press. */
export const TakeReadings = ({
  channels,
  inspections,
  time,
  alignment,
  together,
  draft,
  onDraft,
}: TakeProps) => {
  const [waterName, setWaterName] = useState('')
  const [scaleName, setScaleName] = useState('')
  const [stood, setStood] = useState<Stood | ''>('')
  const [said, setSaid] = useState<string | null>(null)
  const of = (quantity: Channel['quantity']) =>
    channels.filter((channel) => channel.quantity === quantity && channel.time.length > 0)
  const [warm, weighed] = [of('temperature'), of('mass')]
  // Which of several is the water is for the maker to say: the first may well stand in the flue.
  const pick = (some: readonly Channel[], name: string) =>
    some.find((one) => one.name === name) ?? (some.length === 1 ? some[0] : undefined)
  const [water, scale] = [pick(warm, waterName), pick(weighed, scaleName)]
  const { offers, said: why } = useMemo(() => {
    const outliers = ({ name, quantity }: Channel) =>
      new Set(
        inspections
          ?.find((one) => one.name === name && one.quantity === quantity)
          ?.outliers.map(({ line }) => line),
      )
    const some = [
      water === undefined ? NONE : waterOffers(water, alignment, draft, outliers(water)),
      scale === undefined || stood === ''
        ? NONE
        : massOffers(scale, stood, alignment, draft, outliers(scale)),
    ]
    return {
      offers: some.flatMap((one) => one.offers),
      said: [...new Set(some.flatMap((one) => one.said))],
    }
  }, [water, scale, stood, alignment, draft, inspections])
  if (warm.length === 0 && weighed.length === 0) return null
  const open = offers.filter(({ now, text }) => now !== text)
  const put = (some: readonly Offer[]): void => {
    onDraft((now) => some.reduce((draftNow, { path, text }) => changed(draftNow, path, text), now))
    setSaid(`Put in: ${some.map(({ label, text }) => `${label} ${text}`).join('; ')}.`)
  }
  return (
    <section aria-label="Readings for the phases">
      <h3>Readings for the phases</h3>
      <p className="small muted">
        What was read at the start and at the end of each phase, offered for “Weighed and read”. Nothing is
        put there until you press.
      </p>
      <div className="log-add">
        {warm.length > 0 && (
          <ChannelChoice
            label="Water"
            ask="which is the water?"
            channels={warm}
            chosen={water}
            onChoose={setWaterName}
          />
        )}
        {weighed.length > 0 && (
          <>
            <ChannelChoice
              label="Scale"
              ask="which scale?"
              channels={weighed}
              chosen={scale}
              onChoose={setScaleName}
            />
            <label>
              On it stood
              <select value={stood} onChange={(event) => setStood(event.target.value as Stood | '')}>
                <option value="">what was on it?</option>
                {STOOD.map(({ value, label }) => (
                  <option key={value} value={value}>
                    {label}
                  </option>
                ))}
              </select>
            </label>
          </>
        )}
      </div>
      {!together && (
        <p className="align-caution">
          Nobody has brought the clocks together yet: the logger’s first reading passes for the moment of
          lighting.
        </p>
      )}
      {why.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {offers.length > 0 && (
        <>
          <Wide label="Readings offered for the phases">
            <table className="log-table offers">
              <thead>
                <tr>
                  <th scope="col">What</th>
                  <th scope="col">By the logger</th>
                  <th scope="col">Read</th>
                  <th scope="col">There now</th>
                  <th scope="col">
                    <span className="unseen">Put it there</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {offers.map((offer) => (
                  <tr key={offer.path.join('.')}>
                    <th scope="row">{offer.label}</th>
                    <td>
                      <strong>{offer.text}</strong>
                      {offer.how.map((sentence) => (
                        <p key={sentence} className="small muted">
                          {sentence}
                        </p>
                      ))}
                    </td>
                    <td>
                      {runningTime(offer.after * 1000)} after lighting
                      <p className="small muted">{momentText(time, offer.logger)} by the logger</p>
                    </td>
                    <td>{offer.now ?? <span className="muted">nothing</span>}</td>
                    <td>
                      <button
                        type="button"
                        disabled={offer.now === offer.text}
                        aria-label={`${pressWords(offer)}: ${offer.label} ${offer.text}`}
                        onClick={() => put([offer])}
                      >
                        {pressWords(offer)}
                      </button>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Wide>
          {open.length > 1 && (
            <p className="trial-actions">
              <button type="button" onClick={() => put(open)}>
                Put all {open.length} there
                {open.some(({ now }) => now !== null) && ', in place of what stands there'}
              </button>
            </p>
          )}
        </>
      )}
      <p role="status" className="small">
        {said}
      </p>
    </section>
  )
}
