import './trials.css'
import './desk.css'
import './form.css'
import './compare.css'
import './print.css'
import { useEffect, useMemo, useState } from 'react'
import { variantOf } from '#proof/trial/model.ts'
import { BURN_CAUTIONS } from '../atStove/burnCautions.ts'
import { useCell } from '../cell/useCell.ts'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import { documents, documentsFrom, workshop } from '../workshop/workshop.ts'
import { allTrials, type KnownTrial, watchTrials, wholeTrials } from './allTrials.ts'
import { BurnOrderForm } from './burnOrderForm.tsx'
import { DidItHelp } from './didItHelp.tsx'
import { HandOnTrials } from './handOnTrials.tsx'
import { WasItRight } from './predicted/wasItRight.tsx'
import { SeriesOffer } from './seriesOffer.tsx'
import { StartForm } from './startForm.tsx'
import { TakeIn } from './takeIn.tsx'
import { TrialList } from './trialList.tsx'

/**
 * Documents of the same family, this one among them. `stoves`: how many the workshop has, since a new one may belong to it;
 * 0 while it has not heard of this one.
 */
const useFamily = (stove: string, stoves: number): ReadonlySet<string> => {
  const [family, setFamily] = useState<ReadonlySet<string>>(new Set([stove]))
  useEffect(() => {
    let gone = false
    setFamily((known) => (known.has(stove) ? known : new Set([stove])))
    if (stoves === 0) return
    void workshop.ask('family', { document: stove }).then((answer) => {
      if (!gone && answer.ok) setFamily(new Set([stove, ...answer.value.map(({ document }) => document)]))
    })
    return () => {
      gone = true
    }
  }, [stove, stoves])
  return family
}

type Whose = 'stove' | 'family' | 'all'

const WHOSE: readonly { readonly value: Whose; readonly label: string }[] = [
  { value: 'stove', label: 'this stove alone' },
  { value: 'family', label: 'this stove and its family' },
  { value: 'all', label: 'every stove of the workshop' },
]

/** Burns of a stove and its sisters: begin one, look at them, hold variants against each other. */
export const Trials = ({ place }: { readonly place: Extract<Place, { readonly at: 'trials' }> }) => {
  useEffect(watchTrials, [])
  const heads = useCell(documents)
  const stove = heads.find(({ id }) => id === place.stove)
  const there = heads.filter(({ kind, version }) => kind === 'stove' && version > 0).length
  const from = useCell(documentsFrom)
  const shelf = useCell(allTrials)
  const family = useFamily(place.stove, (stove?.version ?? 0) > 0 ? there : 0)
  const [whose, setWhose] = useState<Whose>('family')
  const shown = useMemo(() => {
    const belongs = ({ head: { aboutDocument } }: KnownTrial): boolean =>
      whose === 'all' ||
      aboutDocument === place.stove ||
      (whose === 'family' && aboutDocument !== null && family.has(aboutDocument))
    return shelf.trials.filter(belongs)
  }, [shelf, whose, family, place.stove])
  const whole = useMemo(() => wholeTrials(shown), [shown])
  const variants = [...new Set(whole.map(variantOf))]
  if (stove === undefined)
    return (
      <div className="trials">
        {from === 'looking' ? (
          <p role="status">Looking for the stove …</p>
        ) : (
          <>
            <h1>This stove is not here</h1>
            <Link to={{ at: 'home' }}>Back to the bench</Link>
          </>
        )}
      </div>
    )
  const own = shelf.trials.filter(({ head }) => head.aboutDocument === stove.id)
  return (
    <div className="trials">
      <header className="desk-head">
        <h1>{stove.name}: how it really burnt</h1>
        <ul className="desk-cautions small">
          {BURN_CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </header>
      <section aria-labelledby="trials-start" className="trials-begin">
        <div>
          <h2 id="trials-start">Start a burn</h2>
          <StartForm
            key={`${stove.id} ${own.length > 0}`}
            stove={stove}
            before={own}
            like={shelf.trials.at(-1) ?? null}
          />
        </div>
        <div>
          <h2>Before a series: in which order?</h2>
          <p className="small muted">
            Burn all of one variant first and the damp of the morning passes for a better stove. An order
            drawn by lot spreads such luck over all of them.
          </p>
          <BurnOrderForm key={variants.join()} variants={variants.length > 1 ? variants : [stove.name]} />
        </div>
      </section>
      <section aria-labelledby="trials-list">
        <h2 id="trials-list">Burns</h2>
        <div className="helped-asked">
          <label>
            Burns of
            <select value={whose} onChange={(event) => setWhose(event.target.value as Whose)}>
              {WHOSE.map(({ value, label }) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
            </select>
          </label>
        </div>
        <TakeIn stove={stove.id} trials={shown} loading={shelf.loading} />
        {shelf.loading && (
          <p className="muted" role="status">
            Fetching the burns …
          </p>
        )}
        {shown.length === 0 && !shelf.loading ? (
          <p>
            No burn yet. Start one above: it takes a scale, a thermometer and a phone, and a quarter of an
            hour.
          </p>
        ) : shown.length === 0 ? null : (
          <>
            <TrialList trials={shown} />
            <HandOnTrials name={stove.name} trials={shown} loading={shelf.loading} />
          </>
        )}
        {shelf.unread.map(({ name, sentence }) => (
          <p key={name} data-fault="true">
            {name}: {sentence}
          </p>
        ))}
      </section>
      <section aria-labelledby="trials-helped">
        <h2 id="trials-helped">Did it help?</h2>
        {variants.length < 2 ? (
          <p className="muted">
            Two variants with two burns each are the least that can be compared; three burns of each begin to
            say something.
          </p>
        ) : (
          <DidItHelp trials={whole} />
        )}
        <SeriesOffer />
      </section>
      <section aria-labelledby="trials-right">
        <h2 id="trials-right">Was the prediction right?</h2>
        <WasItRight key={place.stove} trials={shown} />
      </section>
    </div>
  )
}
