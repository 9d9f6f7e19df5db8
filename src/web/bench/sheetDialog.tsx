import { type ReactNode, useEffect, useId, useRef } from 'react'

/** Where a maker writes first: not a choice that is made already. */
const FIRST_FIELD = 'input:not([type=radio], [type=checkbox], [type=file]), textarea, select'

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
  const opener = useRef<Element | null>(null)
  const heading = useId()
  useEffect(() => {
    const dialog = ref.current
    if (dialog === null) return
    if (open && !dialog.open) {
      opener.current = document.activeElement
      dialog.showModal()
      dialog.querySelector<HTMLElement>(FIRST_FIELD)?.focus()
    }
    if (!open && dialog.open) {
      dialog.close()
      // A button that went dead while it was pressed has let go of the focus: the browser then gives it back to nobody.
      if (document.activeElement === document.body && opener.current instanceof HTMLElement)
        opener.current.focus()
    }
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
