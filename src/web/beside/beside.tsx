import './beside.css'
import { useMemo } from 'react'
import { darkTheme, lightTheme } from '#craft/section/theme.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { differenceLine, stoveDifference } from '#stove/difference/difference.ts'
import { MOST_BESIDE } from '../bench/places.ts'
import { useCell } from '../cell/useCell.ts'
import { MakingCautions } from '../plan/cautions.tsx'
import { ScopedSvg } from '../plan/scopedSvg.tsx'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import { theme, units } from '../settings/settings.ts'
import { wordingIn } from '../stoveFacts/wording.ts'
import { BesideCurves, LETTERS } from './curves.tsx'
import { besideRows } from './rows.ts'
import { besideSections } from './sections.ts'
import { type Beside as One, useBeside } from './useBeside.ts'

const Pictures = ({ stoves }: { readonly stoves: readonly One[] }) => {
  const dark = useCell(theme) === 'dark'
  const pictures = useMemo(() => {
    const there = stoves.flatMap(({ id, facts }) =>
      facts?.stove == null ? [] : [{ id, stove: facts.stove }],
    )
    const burnt = there.map(({ stove }) => {
      const outcome = predictSteady(stove)
      const burn = outcome.ok && outcome.value.kind === 'prediction' ? outcome.value.prediction : null
      return { stove, burn }
    })
    const drawn = besideSections(burnt, dark ? darkTheme : lightTheme)
    return new Map(there.map(({ id }, i) => [id, drawn[i] as string]))
  }, [stoves, dark])
  return (
    <ol className="beside-pictures" data-count={stoves.length}>
      {stoves.map(({ id, name, document, facts }, i) => (
        <li key={id}>
          <h2>
            <span className="beside-mark" data-curve={i}>
              {LETTERS[i]}
            </span>{' '}
            {document === null ? name : <Link to={{ at: 'stove', stove: document }}>{name}</Link>}
          </h2>
          {pictures.has(id) ? (
            <ScopedSvg svg={pictures.get(id) as string} className="beside-picture" />
          ) : (
            <div className="beside-picture">
              <p className="muted">{facts === null ? 'Burning it …' : facts.sentence}</p>
            </div>
          )}
        </li>
      ))}
    </ol>
  )
}

const Answers = ({ stoves }: { readonly stoves: readonly One[] }) => {
  const inUnits = useCell(units)
  const rows = besideRows(
    stoves.map(({ facts }) => facts?.report ?? null),
    inUnits,
  )
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="beside-answers" aria-label="Answers" tabIndex={0}>
      <table>
        <caption className="unseen">What each stove does, and how it differs from {stoves[0]?.name}</caption>
        <thead>
          <tr>
            <td />
            {stoves.map(({ id, name }, i) => (
              <th key={id} scope="col">
                {LETTERS[i]} {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ caption, cells }) => (
            <tr key={caption}>
              <th scope="row">{caption}</th>
              {cells.map(({ value, change }, i) => (
                <td key={stoves[i]?.id}>
                  <strong>{value}</strong>
                  {change === null ? null : <span className="muted small">{change}</span>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

const Differences = ({ stoves }: { readonly stoves: readonly One[] }) => {
  const [base, ...others] = stoves
  const file = base?.facts?.file ?? null
  const inUnits = useCell(units)
  return (
    <section className="beside-differences" aria-labelledby="beside-files">
      <h2 id="beside-files">What differs from {base?.name}</h2>
      <div>
        {others.map(({ id, name, facts }, i) => {
          const lines =
            file === null || facts?.file == null
              ? null
              : stoveDifference(file, facts.file, wordingIn(inUnits)).map(differenceLine)
          return (
            <section key={id} aria-label={name}>
              <h3>
                {LETTERS[i + 1]} {name}
              </h3>
              {lines === null ? (
                <p className="muted">…</p>
              ) : lines.length === 0 ? (
                <p className="muted">Nothing.</p>
              ) : (
                <ul>
                  {lines.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              )}
            </section>
          )
        })}
      </div>
    </section>
  )
}

/** Two to four stoves side by side: one scale, one clock, and what differs. */
export const Beside = ({ place }: { readonly place: Extract<Place, { readonly at: 'beside' }> }) => {
  const ids = useMemo(() => [...new Set(place.stoves)].slice(0, MOST_BESIDE), [place.stoves])
  const { looking, stoves } = useBeside(ids)
  if (looking) return <p role="status">Looking into the workshop …</p>
  const busy = stoves.some(({ facts }) => facts === null)
  return (
    <div className="beside" aria-busy={busy}>
      <h1>Side by side</h1>
      {place.stoves.length > MOST_BESIDE ? (
        <p className="muted">Four stand side by side; the first four are shown.</p>
      ) : null}
      <p className="unseen" role="status">
        {busy ? 'Burning them …' : 'All of them are burnt.'}
      </p>
      <Pictures stoves={stoves} />
      <Answers stoves={stoves} />
      <section aria-labelledby="beside-burns">
        <h2 id="beside-burns">The burns</h2>
        <BesideCurves stoves={stoves.map(({ name, facts }) => ({ name, report: facts?.report ?? null }))} />
      </section>
      <Differences stoves={stoves} />
      <p className="muted small">
        All at one scale, and burnt on a calm, mild day with each stove’s own fuel. Predictions, no
        measurements.
      </p>
      <MakingCautions />
    </div>
  )
}
