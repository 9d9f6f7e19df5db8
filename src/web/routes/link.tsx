import type { AnchorHTMLAttributes, MouseEvent } from 'react'
import { go } from './here.ts'
import { type Place, pathOf } from './routes.ts'

interface LinkProps extends Omit<AnchorHTMLAttributes<HTMLAnchorElement>, 'href'> {
  readonly to: Place
}

/** A true link, so that it can be opened in another tab; a plain click stays in this page. */
export const Link = ({ to, onClick, children, ...rest }: LinkProps) => {
  const click = (event: MouseEvent<HTMLAnchorElement>): void => {
    onClick?.(event)
    const plain = event.button === 0 && !(event.metaKey || event.ctrlKey || event.shiftKey || event.altKey)
    if (event.defaultPrevented || !plain) return
    event.preventDefault()
    go(to)
  }
  return (
    <a href={pathOf(to)} onClick={click} {...rest}>
      {children}
    </a>
  )
}
