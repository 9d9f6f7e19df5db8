import { lazy, Suspense, useState } from 'react'
import { type QuantityKey, quantity } from '#basis/quantities.ts'
import { SheetDialog } from '../bench/sheetDialog.tsx'
import './help.css'

const Source = lazy(() => import('./source.tsx').then((room) => ({ default: room.Source })))

const capital = (text: string): string => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`

/** A small button beside a number that tells what it is, and where it comes from. */
export const Explain = ({ quantity: key }: { readonly quantity: QuantityKey }) => {
  const [open, setOpen] = useState(false)
  const { name, description } = quantity(key)
  return (
    <>
      <button
        type="button"
        className="explain"
        aria-haspopup="dialog"
        aria-label={`What is ${name}?`}
        title={`What is ${name}?`}
        onClick={() => setOpen(true)}
      >
        <span aria-hidden="true">?</span>
      </button>
      <SheetDialog title={capital(name)} open={open} onClose={() => setOpen(false)}>
        <div className="explained">
          <p>{description}</p>
          <Suspense fallback={<p className="muted">Looking up its source …</p>}>
            <Source quantity={key} />
          </Suspense>
        </div>
      </SheetDialog>
    </>
  )
}
