import { useEffect, useId, useRef, useState } from 'react'

interface StepperProps {
  readonly name: string
  readonly text: string
  /** What is to be known of it, under it. */
  readonly note?: string
  /** Null: it cannot go there. */
  readonly onLess: (() => void) | null
  readonly onMore: (() => void) | null
  /** Takes what was typed; gives back why it will not do, or null. */
  readonly onText?: ((text: string) => string | null) | undefined
}

/** A figure between a button for less and one for more; typed over where that is allowed. */
export const Stepper = ({ name, text, note, onLess, onMore, onText }: StepperProps) => {
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const field = useRef<HTMLInputElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: another figure takes the fault of the old one away
  useEffect(() => setFault(null), [text])
  const settle = (): void => {
    if (typed === null) return
    const why = typed.trim() === text ? null : (onText?.(typed) ?? null)
    setFault(why)
    if (why === null) setTyped(null)
  }
  return (
    <div className="stepper">
      <label htmlFor={id}>{name}</label>
      <div className="stepper-row">
        <button
          type="button"
          aria-label={`${name}: less`}
          disabled={onLess === null}
          onClick={() => onLess?.()}
        >
          −
        </button>
        {onText === undefined ? (
          <output id={id}>{text}</output>
        ) : (
          <input
            id={id}
            ref={field}
            value={typed ?? text}
            aria-invalid={fault !== null}
            aria-describedby={fault !== null ? `${id}-fault` : note === undefined ? undefined : `${id}-note`}
            onChange={(event) => setTyped(event.target.value)}
            onBlur={settle}
            onKeyDown={(event) => {
              if (event.key === 'Enter') settle()
              else if (event.key === 'Escape') {
                setTyped(null)
                setFault(null)
              } else return
              event.stopPropagation()
              event.preventDefault()
            }}
          />
        )}
        <button
          type="button"
          aria-label={`${name}: more`}
          disabled={onMore === null}
          onClick={() => onMore?.()}
        >
          +
        </button>
      </div>
      {note === undefined || fault !== null ? null : (
        <p id={`${id}-note`} className="small muted">
          {note}
        </p>
      )}
      {fault === null ? null : (
        <p id={`${id}-fault`} className="stepper-fault small" role="alert">
          {fault}
        </p>
      )}
    </div>
  )
}
