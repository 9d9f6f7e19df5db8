import { useLayoutEffect, useRef, useState } from 'react'
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

interface Burn {
  /** What this device keeps of the burn has been read. */
  readonly ready: boolean
  /** This device has noted something of it. */
  readonly begun: boolean
}

/** Said once before the first burn, in full, and again when their wording changes; at hand ever after. */
export const BurnCautions = ({ ready, begun }: Burn) => {
  const dialog = useRef<HTMLDialogElement>(null)
  const [remembers, setRead] = useState(() => remembered(KEY, '') === WORDING)
  // Nothing is noted before they were read. A browser that was killed has forgotten it, and opens in the middle of the
  // burn: they would stand before the buttons.
  const read = remembers || begun
  useLayoutEffect(() => {
    if (ready && !read) dialog.current?.showModal()
  }, [ready, read])
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
