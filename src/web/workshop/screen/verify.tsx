import { useState } from 'react'
import { workshop } from '../workshop.ts'

type State =
  | { readonly kind: 'idle' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'read'; readonly faults: readonly string[] }
  | { readonly kind: 'refused'; readonly sentence: string }

/** Reads everything and compares it with what was written. */
export const Verify = () => {
  const [state, setState] = useState<State>({ kind: 'idle' })
  const verify = async (): Promise<void> => {
    setState({ kind: 'reading' })
    const answer = await workshop.ask('verify', {})
    setState(
      answer.ok
        ? { kind: 'read', faults: answer.value }
        : { kind: 'refused', sentence: answer.refusal.sentence },
    )
  }
  return (
    <section>
      <h2>Is it whole?</h2>
      <p>Reads every revision and photo and compares it with what was written.</p>
      <div className="row">
        <button type="button" disabled={state.kind === 'reading'} onClick={() => void verify()}>
          {state.kind === 'reading' ? 'Reading all of it …' : 'Read all of it'}
        </button>
      </div>
      <div role="status">
        {state.kind === 'refused' ? <p className="workshop-warn">{state.sentence}</p> : null}
        {state.kind === 'read' && state.faults.length === 0 ? <p>Everything is as it was written.</p> : null}
        {state.kind === 'read' && state.faults.length > 0 ? (
          <ul className="workshop-warn">
            {state.faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        ) : null}
      </div>
    </section>
  )
}
