import type { Awake } from './wakeLock.ts'

/** What this browser withholds from the page at the stove, and what to do about it; nothing where it withholds nothing. */
export const HoldsOn = ({ awake }: { readonly awake: Awake }) => {
  // As over plain HTTP from another device: no keep for pages, no screen kept on.
  if (!isSecureContext)
    return (
      <p className="small">
        Keep this page open until the burn is over, and set the phone to turn its screen off later: every
        entry is kept, but the bench was started without a certificate (--certificate and --key), so out of
        its reach this page cannot be opened again.
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
