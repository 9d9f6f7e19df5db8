import { useState } from 'react'
import { ScopedSvg } from './scopedSvg.tsx'
import type { PlanPages as Pages } from './worker/job.ts'

/** The pages of a plan, small side by side; one of them large when it is opened. */
export const PlanPages = ({ pages, missingLetters, noBurn }: Pages) => {
  const [open, setOpen] = useState<number | null>(null)
  const shown = open === null ? undefined : pages[open]
  return (
    <section className="plan-shown" aria-labelledby="plan-pages-title">
      <h2 id="plan-pages-title" tabIndex={-1}>
        {pages.length} {pages.length === 1 ? 'page' : 'pages'}
      </h2>
      {noBurn === null ? null : <p className="plan-said">As drawn it does not burn: {noBurn}</p>}
      {missingLetters.length === 0 ? null : (
        <p className="plan-said">The font has no letter for {missingLetters.join(' ')}; they print as “?”.</p>
      )}
      <p className="muted small">
        A screen has no true size: drill from paper, after measuring both check bars.
      </p>
      <ol className="plan-pages">
        {pages.map((page, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a page is its place in the plan
          <li key={index}>
            <div className="plan-page" style={{ aspectRatio: `${page.width} / ${page.height}` }}>
              <ScopedSvg svg={page.svg} className="plan-paper" />
              <button
                type="button"
                onClick={() => setOpen(index)}
                aria-label={`Look at page ${index + 1}, ${page.label}`}
              />
            </div>
            <span className="small">
              {index + 1} <span className="muted">{page.label}</span>
            </span>
          </li>
        ))}
      </ol>
      {shown === undefined || open === null ? null : (
        <dialog
          className="plan-large"
          aria-label={`Page ${open + 1} of ${pages.length}, ${shown.label}`}
          ref={(dialog) => {
            if (dialog !== null && !dialog.open) dialog.showModal()
          }}
          onClose={() => setOpen(null)}
          onKeyDown={(event) => {
            const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
            if (by === 0 || pages[open + by] === undefined) return
            event.preventDefault()
            setOpen(open + by)
          }}
        >
          <div className="plan-turn">
            <button type="button" disabled={open === 0} onClick={() => setOpen(open - 1)}>
              Page before
            </button>
            <span role="status">
              Page {open + 1} of {pages.length}: {shown.label}
            </span>
            <button type="button" disabled={open === pages.length - 1} onClick={() => setOpen(open + 1)}>
              Next page
            </button>
            <button type="button" data-weight="main" onClick={() => setOpen(null)}>
              Close
            </button>
          </div>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
          <section className="plan-sheet" tabIndex={0} aria-label="The page">
            <div className="plan-sheet-paper" style={{ aspectRatio: `${shown.width} / ${shown.height}` }}>
              <ScopedSvg svg={shown.svg} className="plan-paper" />
            </div>
          </section>
        </dialog>
      )}
    </section>
  )
}
