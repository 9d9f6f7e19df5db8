import { Component, type ReactNode } from 'react'

interface MishapProps {
  /** Another place begins anew. */
  readonly at: string
  readonly children: ReactNode
}

interface MishapState {
  readonly fault: string | null
  readonly at: string
}

/** Where a screen breaks, the frame stands: what happened, and what is safe. (React has no other way than a class.) */
export class Mishap extends Component<MishapProps, MishapState> {
  override state: MishapState = { fault: null, at: this.props.at }

  static getDerivedStateFromError(fault: unknown): Partial<MishapState> {
    return { fault: fault instanceof Error ? fault.message : String(fault) }
  }

  static getDerivedStateFromProps({ at }: MishapProps, state: MishapState): MishapState | null {
    return at === state.at ? null : { fault: null, at }
  }

  override render(): ReactNode {
    const { fault } = this.state
    if (fault === null) return this.props.children
    const missing = /dynamically imported module|Importing a module script failed/i.test(fault)
    return (
      <div className="mishap" role="alert">
        <h1>{missing ? 'This part of the bench could not be fetched' : 'This part of the bench broke'}</h1>
        <p>
          {missing
            ? 'The workshop does not answer, or there is a newer bench since. What you did is kept.'
            : 'That is a fault of the program, not of your stove. What you did up to here is kept.'}
        </p>
        <p className="muted small">{fault}</p>
        <div className="row">
          <button type="button" data-weight="main" onClick={() => location.reload()}>
            Load the page again
          </button>
          <button type="button" onClick={() => this.setState({ fault: null })}>
            Try it once more
          </button>
        </div>
      </div>
    )
  }
}
