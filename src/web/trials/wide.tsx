import type { ReactNode } from 'react'

/** What may be wider than the page: it moves by itself, by hand or by the arrow keys. */
export const Wide = ({ label, children }: { readonly label: string; readonly children: ReactNode }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: whoever has no pointer moves it by keys
  <section className="trial-list" aria-label={label} tabIndex={0}>
    {children}
  </section>
)
