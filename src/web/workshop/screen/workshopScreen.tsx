import { useCell } from '../../cell/useCell.ts'
import type { Place } from '../../routes/routes.ts'
import { about, documents, door } from '../workshop.ts'
import { Archive } from './archive.tsx'
import { Devices } from './devices.tsx'
import { Photos } from './photos.tsx'
import { ThisDevice } from './thisDevice.tsx'
import { Verify } from './verify.tsx'
import './workshopScreen.css'

const KINDS = [
  ['stove', 'stove', 'stoves'],
  ['can', 'can', 'cans'],
  ['bit', 'bit', 'bits'],
  ['fuel', 'fuel', 'fuels'],
  ['pot', 'pot', 'pots'],
  ['trial', 'trial', 'trials'],
  ['photo', 'photo', 'photos'],
] as const

const Contents = () => {
  const all = useCell(documents)
  const counts = KINDS.map(([kind, one, more]) => {
    const count = all.filter((document) => document.kind === kind).length
    return { kind, count, word: count === 1 ? one : more }
  }).filter(({ count }) => count > 0)
  if (counts.length === 0) return <p>There is nothing in it yet.</p>
  return (
    <ul className="workshop-counts">
      {counts.map(({ kind, count, word }) => (
        <li key={kind}>
          <strong>{count}</strong> {word}
        </li>
      ))}
    </ul>
  )
}

/** Where everything lies, how it comes in and out, whether it is whole, and who may come in. */
export const WorkshopScreen = (_: { readonly place: Extract<Place, { readonly at: 'workshop' }> }) => {
  const workshop = useCell(about)
  const standing = useCell(door)
  return (
    <div className="workshop">
      <h1>Workshop</h1>
      <section>
        <h2>Where it is</h2>
        {workshop === null ? (
          <p className="muted">The workshop has not answered yet.</p>
        ) : (
          <>
            <p className="workshop-place">{workshop.place}</p>
            <p className="muted small">
              Begun {new Date(workshop.created).toLocaleDateString([], { dateStyle: 'long' })}
              {workshop.demo === null ? '' : '; the invented stoves of the demo were laid into it'}.
              {standing === null ? '' : ` Bench ${standing.version}.`}
            </p>
          </>
        )}
        <Contents />
      </section>
      <Archive />
      <Verify />
      {standing?.from === 'the house' ? <ThisDevice standing={standing} /> : <Devices standing={standing} />}
      <Photos />
    </div>
  )
}
