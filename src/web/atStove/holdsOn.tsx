import type { Awake } from './wakeLock.ts'

/** What this browser withholds from the page at the stove, and what to do about it; nothing where it withholds nothing. */
export const HoldsOn = ({ awake }: { readonly awake: Awake }) => {
  // As over plain HTTP from another device: no keep for pages, no screen kept on.
  if (!isSecureContext)
    return (
      <p className="small">
        Keep this page open, and the phone from turning its screen off, until the burn is over: every entry is
        kept, but without a certificate of the bench’s own (--certificate and --key) this page cannot be
        opened again out of its reach.
      </p>
    )
  if (awake === 'not here')
    return (
      <p className="small muted">
        This browser does not keep the screen awake on this page: set the phone to turn it off later.
      </p>
    )
  return null
}
