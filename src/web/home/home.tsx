import { MOST_BESIDE } from '../bench/places.ts'
import { useCell } from '../cell/useCell.ts'
import { MakingCautions } from '../plan/cautions.tsx'
import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'
import { documents, documentsFrom, takenAway } from '../workshop/workshop.ts'
import { DropPlace, FilesButton } from './bringFiles.tsx'
import { bringBack } from './deeds.ts'
import { familiesOf, type StoveFamily } from './families.ts'
import { origins } from './originsCell.ts'
import { StoveRow } from './stoveRow.tsx'
import './home.css'

const FamilyBlock = ({
  family: { founder, members },
  trials,
}: {
  readonly family: StoveFamily
  readonly trials: (stove: string) => number
}) => {
  const several = members.length > 1
  const variants = members.length - 1
  return (
    <section className="stove-family" data-several={several} aria-label={`The family of ${founder.name}`}>
      {several ? (
        <header>
          <h2>
            {founder.name} and {variants === 1 ? 'its variant' : `its ${variants} variants`}
          </h2>
          <Link to={{ at: 'family', stove: founder.id }}>Family tree</Link>
          <Link to={{ at: 'beside', stoves: members.slice(0, MOST_BESIDE).map(({ stove }) => stove.id) }}>
            {members.length > MOST_BESIDE ? 'First four side by side' : 'Side by side'}
          </Link>
        </header>
      ) : null}
      <div className="stove-rows">
        {members.map(({ stove, from }) => (
          <StoveRow
            key={stove.id}
            stove={stove}
            from={from}
            trials={trials(stove.id)}
            heading={several ? 'h3' : 'h2'}
          />
        ))}
      </div>
    </section>
  )
}

const NoStoves = () => (
  <div className="no-stoves">
    <p>
      There is no stove in this workshop. Start one from two cans of your shelf, or bring in a stove file that
      somebody gave you: drop it on this page.
    </p>
  </div>
)

const TakenAway = () => {
  const gone = useCell(takenAway).filter(({ kind }) => kind === 'stove')
  if (gone.length === 0) return null
  return (
    <details className="taken-away">
      <summary>Taken away ({gone.length})</summary>
      <ul>
        {gone.map((stove) => (
          <li key={stove.id}>
            {stove.name}
            <button
              type="button"
              aria-label={`Bring back ${stove.name}`}
              onClick={() => void bringBack(stove)}
            >
              Bring back
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}

/** The stoves of the workshop, family by family. */
export const Home = (_: { readonly place: Extract<Place, { readonly at: 'home' }> }) => {
  const all = useCell(documents)
  const from = useCell(documentsFrom)
  const known = useCell(origins)
  const stoves = all.filter(({ kind }) => kind === 'stove')
  const families = familiesOf(stoves, known)
  const trials = (stove: string): number =>
    all.filter(({ kind, aboutDocument }) => kind === 'trial' && aboutDocument === stove).length
  return (
    <DropPlace>
      <header className="home-head">
        <h1>Stoves</h1>
        <Link to={{ at: 'start' }} className="button">
          Start a stove
        </Link>
        <FilesButton />
      </header>
      {from === 'looking' ? (
        <p role="status" className="muted">
          Looking into the workshop …
        </p>
      ) : stoves.length === 0 ? (
        <NoStoves />
      ) : (
        <>
          <div className="stove-families">
            {families.map((family) => (
              <FamilyBlock key={family.founder.id} family={family} trials={trials} />
            ))}
          </div>
          <p className="muted small home-note">
            Firepower and times are the model’s medians, on a calm, mild day: predictions, no measurements.
          </p>
          <MakingCautions />
        </>
      )}
      <TakenAway />
    </DropPlace>
  )
}
