import { type ReactNode, useEffect, useId, useRef } from 'react'

/** A sheet laid over the page: closed by its button, by Escape and by a click beside it. */
export const SheetDialog = ({
  title,
  open,
  onClose,
  children,
}: {
  readonly title: string
  readonly open: boolean
  readonly onClose: () => void
  readonly children: ReactNode
}) => {
  const ref = useRef<HTMLDialogElement>(null)
  const heading = useId()
  useEffect(() => {
    const dialog = ref.current
    if (dialog === null) return
    if (open && !dialog.open) dialog.showModal()
    if (!open && dialog.open) dialog.close()
  }, [open])
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes it, and so does its button
    <dialog
      ref={ref}
      className="sheet-dialog"
      aria-labelledby={heading}
      onClose={onClose}
      onClick={(event) => {
        if (event.target === ref.current) onClose()
      }}
    >
      <div className="sheet-inner">
        <header>
          <h2 id={heading}>{title}</h2>
          <button type="button" onClick={onClose}>
            Close
          </button>
        </header>
        {open ? children : null}
      </div>
    </dialog>
  )
}
