import { useEffect, useRef, useState } from 'react'
import { BURN_CAUTIONS } from './burnCautions.ts'
import { remember, remembered } from './device.ts'

const KEY = 'tinwright.burn-cautions'
const WORDING = BURN_CAUTIONS.join('\n')

const List = () => (
  <ul className="burn-cautions">
    {BURN_CAUTIONS.map((caution) => (
      <li key={caution}>{caution}</li>
    ))}
  </ul>
)

/** Said once before the first burn, in full, and again when their wording changes; at hand ever after. */
export const BurnCautions = () => {
  const dialog = useRef<HTMLDialogElement>(null)
  const [read, setRead] = useState(() => remembered(KEY, '') === WORDING)
  useEffect(() => {
    if (!read) dialog.current?.showModal()
  }, [read])
  const understood = (): void => {
    remember(KEY, WORDING)
    setRead(true)
    dialog.current?.close()
  }
  return (
    <>
      <button type="button" className="burn-aside" onClick={() => dialog.current?.showModal()}>
        Cautions
      </button>
      <dialog
        ref={dialog}
        className="burn-dialog"
        aria-labelledby="burn-cautions"
        onCancel={(event) => {
          // Before the first burn they are to be read, not waved away.
          if (!read) event.preventDefault()
        }}
      >
        <h2 id="burn-cautions">Before you light it</h2>
        <List />
        <button type="button" className="burn-wide" data-weight="main" onClick={understood}>
          {read ? 'Back to the burn' : 'I am outdoors, with water at hand'}
        </button>
      </dialog>
    </>
  )
}
