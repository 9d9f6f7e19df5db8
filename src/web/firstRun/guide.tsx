import { useCell } from '../cell/useCell.ts'
import { go } from '../routes/here.ts'
import { about, documents } from '../workshop/workshop.ts'
import { endGuide, guideStep, showStep } from './guideState.ts'
import { GUIDE_STEPS, GUIDE_STOVE } from './steps.ts'
import './guide.css'

/** Shows a maker round in a workshop that holds the demo; once, and whenever the help is asked for it. */
export const Guide = () => {
  const step = useCell(guideStep)
  const workshop = useCell(about)
  const stoves = useCell(documents).filter(({ kind }) => kind === 'stove')
  const demo = stoves.find(({ name }) => name === GUIDE_STOVE)
  if (step === null || demo === undefined) return null
  if (step === 'never begun' && (workshop === null || workshop.demo === null)) return null
  const at = step === 'never begun' ? 0 : Math.min(step, GUIDE_STEPS.length - 1)
  const next = GUIDE_STEPS[at + 1]
  const show = (to: number): void => {
    showStep(to)
    const { on, place } = GUIDE_STEPS[to] as (typeof GUIDE_STEPS)[number]
    go(place(stoves.find(({ name }) => name === on) ?? demo))
  }
  return (
    <aside className="guide" aria-label="Shown round">
      <p>{GUIDE_STEPS[at]?.words}</p>
      <div className="row">
        {at === 0 ? null : (
          <button type="button" data-weight="quiet" onClick={() => show(at - 1)}>
            Back
          </button>
        )}
        {next === undefined ? null : (
          <button type="button" onClick={() => show(at + 1)}>
            {next.go}
          </button>
        )}
        <button type="button" data-weight="quiet" onClick={endGuide}>
          {next === undefined ? 'That is all' : 'Enough, I find my way'}
        </button>
        <span className="muted small">
          {at + 1} of {GUIDE_STEPS.length}
        </span>
      </div>
    </aside>
  )
}
