import { type ReactNode, useEffect, useRef } from 'react'

interface SheetProps {
  readonly open: boolean
  readonly onClose: () => void
  readonly children: ReactNode
}

/** A page over the page, closed by Escape or by its button. Its heading has the id `burn-pad`. */
export const Sheet = ({ open, onClose, children }: SheetProps) => {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    if (open && dialog.current?.open === false) dialog.current.showModal()
    if (!open) dialog.current?.close()
  }, [open])
  return (
    <dialog ref={dialog} className="burn-dialog" aria-labelledby="burn-pad" onClose={onClose}>
      {open && children}
      <button type="button" className="burn-wide" data-weight="quiet" onClick={() => dialog.current?.close()}>
        Back
      </button>
    </dialog>
  )
}
