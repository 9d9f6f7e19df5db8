import type { DocumentHead } from '#wire/documents.ts'
import { useCell } from '../cell/useCell.ts'
import { Link } from '../routes/link.tsx'
import { theme, type Units, units } from '../settings/settings.ts'
import { type BurnFacts, burnFacts } from '../stoveFacts/burnFacts.ts'
import { oneLine } from './oneLine.ts'
import { SMALL_HEIGHT, SMALL_WIDTH } from './smallSection.ts'
import { stoveFacts } from './stoveFacts.ts'
import { StoveMore } from './stoveMore.tsx'

const dayOf = (at: string): string =>
  new Date(at).toLocaleDateString([], { day: 'numeric', month: 'short', year: 'numeric' })

const trialsWord = (count: number): string =>
  count === 0 ? 'no trials yet' : count === 1 ? '1 trial' : `${count} trials`

const lineOf = (burnt: BurnFacts | null, inUnits: Units): string => {
  if (burnt === null) return 'Working it out …'
  if (burnt.report !== null) return oneLine(burnt.report, inUnits)
  return burnt.stove === null ? `Does not read: ${burnt.sentence ?? ''}` : (burnt.sentence ?? '')
}

/** One stove in the list: what it looks like, what it does, what was changed last. */
export const StoveRow = ({
  stove,
  from,
  trials,
  heading: Heading,
}: {
  readonly stove: DocumentHead
  readonly from: DocumentHead | null
  readonly trials: number
  /** Under the heading of a family, or a heading of its own. */
  readonly heading: 'h2' | 'h3'
}) => {
  const facts = useCell(stoveFacts(stove.head))
  const burnt = useCell(burnFacts(stove.head))
  const inUnits = useCell(units)
  const look = useCell(theme)
  const picture = facts?.pictures?.[look]
  return (
    <article className="stove-row">
      <div className="stove-picture">
        {picture === undefined ? null : (
          <img src={picture} width={SMALL_WIDTH} height={SMALL_HEIGHT} alt="" />
        )}
      </div>
      <div className="stove-words">
        <Heading>
          <Link to={{ at: 'stove', stove: stove.id }}>{stove.name}</Link>
        </Heading>
        {from === null ? null : <p className="muted small">made from {from.name}</p>}
        <p className="stove-line">{lineOf(burnt, inUnits)}</p>
        <p className="muted small">
          {facts === null
            ? '\u00a0'
            : `${dayOf(facts.changed)}: ${facts.note === '' ? 'as begun' : facts.note}`}
        </p>
        <div className="stove-ways">
          <Link to={{ at: 'trials', stove: stove.id }}>{trialsWord(trials)}</Link>
          <StoveMore stove={stove} />
        </div>
      </div>
    </article>
  )
}
