import { useLayoutEffect, useRef } from 'react'

/**
 * A picture of this house in a scope of its own: its ids meet no others, the page's lettering reaches into it.
 * What comes in is written by our own writers, which escape every word of the maker's.
 */
export const ScopedSvg = ({ svg, className }: { readonly svg: string; readonly className: string }) => {
  const host = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const place = host.current
    if (place === null) return
    const root = place.shadowRoot ?? place.attachShadow({ mode: 'open' })
    root.innerHTML = svg
    const picture = root.querySelector('svg')
    if (picture === null) return
    picture.style.display = 'block'
    picture.style.width = '100%'
    picture.style.height = '100%'
  }, [svg])
  return <div ref={host} className={className} />
}
