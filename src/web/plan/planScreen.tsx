import './plan.css'
import { useMemo, useState } from 'react'
import type { Artefact } from '#compose/artefact/artefacts.ts'
import type { MakingWish } from '#compose/artefact/wish.ts'
import { dim } from '../bench/dim.ts'
import { useCell } from '../cell/useCell.ts'
import type { Place } from '../routes/routes.ts'
import { shelfItems } from '../shelf/items.ts'
import { shelfOf } from '../shelf/shelfOf.ts'
import { USUAL_SETS } from '../solve/client.ts'
import type { StoveEditor } from '../stove/editor.ts'
import { isEditor, useStoveEditor } from '../workshop/useStoveEditor.ts'
import { MakingCautions } from './cautions.tsx'
import { download } from './download.ts'
import { issue, today } from './issue.ts'
import { IssueForm } from './issueForm.tsx'
import { offersOf } from './offers.ts'
import { PlanPages } from './planPages.tsx'
import { useMaking } from './useMaking.ts'
import type { PlanPages as Pages } from './worker/job.ts'

const Progress = ({
  what,
  doing,
  share,
  onCancel,
}: {
  readonly what: string
  readonly doing: string
  readonly share: number | null
  readonly onCancel: () => void
}) => (
  <div className="plan-progress">
    <p>
      <strong>{what}</strong> <span className="muted">{doing} …</span>
    </p>
    <progress aria-label={`${what}: ${doing}`} {...(share === null ? {} : { value: share })} />
    <button type="button" onClick={onCancel}>
      Cancel
    </button>
  </div>
)

/** The plan of one stove: its pages to look at, and everything that can be taken away. */
const Plan = ({ editor }: { readonly editor: StoveEditor }) => {
  const { file, stove, problems, findings } = useCell(editor.state)
  const shelf = useCell(shelfItems)
  const chosen = useCell(issue)
  const [date, setDate] = useState(today)
  const [pages, setPages] = useState<{ readonly of: MakingWish; readonly pages: Pages } | null>(null)
  const { state, run, cancel } = useMaking()

  const wish = useMemo<MakingWish>(
    () => ({
      document: { file, stove },
      shelf: shelf.items.length === 0 ? null : shelfOf(shelf.items),
      date,
      author: chosen.author.trim() === '' ? null : chosen.author.trim(),
      licence: chosen.licence.trim() === '' ? null : chosen.licence.trim(),
      paper: chosen.paper,
      solidFormat: chosen.solidFormat,
      cardFormat: chosen.cardFormat,
      cardTheme: chosen.cardTheme,
      bandSets: USUAL_SETS,
    }),
    [file, stove, shelf.items, date, chosen],
  )

  const look = async (): Promise<void> => {
    const outcome = await run('Pages to look at', 'pages', wish)
    if (outcome.kind !== 'done') return
    setPages({ of: wish, pages: outcome.done })
    requestAnimationFrame(() => document.getElementById('plan-pages-title')?.focus())
  }
  const [nothing, setNothing] = useState<string | null>(null)
  const fetchOne = async (artefact: Artefact | 'everything', title: string): Promise<void> => {
    setNothing(null)
    const outcome = await run(title, 'make', { ...wish, artefact })
    if (outcome.kind !== 'done') return
    if (outcome.done === null) setNothing(`${title}: there is nothing of the kind in this stove.`)
    else download(outcome.done)
  }

  const stops = findings.filter(({ severity }) => severity === 'stop')
  const warns = findings.filter(({ severity }) => severity === 'warn')
  const idle = state.kind === 'making' || date === ''
  return (
    <div className="plan">
      <header className="plan-head">
        <h1>Plan</h1>
        {problems.length === 0 ? null : (
          <p className="plan-said" role="alert">
            Something in the stove file does not read: the plan is of the stove as it last did.
          </p>
        )}
        {stops.length === 0 ? null : (
          <section className="plan-stops" aria-labelledby="plan-stops-title">
            <h2 id="plan-stops-title">Do not build this stove as it is drawn</h2>
            <ul>
              {stops.map((finding) => (
                <li key={`${finding.code} ${finding.part} ${finding.opening} ${finding.sentence}`}>
                  <strong>
                    {finding.part}
                    {finding.opening === null ? '' : `, ${finding.opening}`}:
                  </strong>{' '}
                  {finding.sentence} {finding.fix}
                </li>
              ))}
            </ul>
          </section>
        )}
        {warns.length === 0 ? null : (
          <p className="muted">
            {warns.length} {warns.length === 1 ? 'warning stands' : 'warnings stand'} in the plan:{' '}
            {warns[0]?.sentence}
          </p>
        )}
      </header>

      <div className="plan-body">
        <div className="plan-side">
          <IssueForm date={date} onDate={setDate} />
          <MakingCautions />
        </div>
        <div className="plan-main">
          <div className="plan-all">
            <button
              type="button"
              data-weight="main"
              {...dim(idle, () => void fetchOne('everything', 'Everything in one archive'))}
            >
              Download everything (ZIP)
            </button>
            <button type="button" {...dim(idle, () => void look())}>
              {pages === null ? 'Look at the pages' : 'Lay the pages anew'}
            </button>
          </div>
          <div className="plan-state" aria-live="polite">
            {state.kind === 'making' ? (
              <Progress what={state.what} doing={state.doing} share={state.share} onCancel={cancel} />
            ) : null}
            {state.kind === 'failed' ? (
              <p className="plan-said">
                {state.what} could not be made. {state.sentence}
              </p>
            ) : null}
            {state.kind === 'made' && nothing === null ? <p className="muted">{state.what}: made.</p> : null}
            {nothing === null ? null : <p className="plan-said">{nothing}</p>}
          </div>
          {offersOf(chosen).map((group) => (
            <section key={group.title} className="plan-group">
              <h2>{group.title}</h2>
              <ul>
                {group.offers.map((offer) => (
                  <li key={offer.artefact} className="plan-offer">
                    <span>
                      <strong>{offer.title}</strong> <span className="muted">{offer.about}</span>
                    </span>
                    <button
                      type="button"
                      aria-label={`Download ${offer.title}, ${offer.as}`}
                      {...dim(idle, () => void fetchOne(offer.artefact, offer.title))}
                    >
                      {offer.as}
                    </button>
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </div>
      </div>
      {pages === null ? null : (
        <>
          {pages.of === wish ? null : (
            <p className="plan-said">Something has changed since these pages were laid.</p>
          )}
          <PlanPages {...pages.pages} />
        </>
      )}
    </div>
  )
}

export const PlanScreen = ({ place }: { readonly place: Extract<Place, { readonly at: 'plan' }> }) => {
  const editor = useStoveEditor(place.stove)
  if ('loading' in editor) return <p role="status">Fetching the stove …</p>
  if (!isEditor(editor)) return <p role="alert">{editor.sentence}</p>
  return <Plan editor={editor} />
}
