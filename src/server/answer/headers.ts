import type { Entrance } from '../guest/asked.ts'

/**
 * What the pages of the bench may do. Everything comes from the bench itself.
 *
 * * `wasm-unsafe-eval`: solids and PNG are made by WebAssembly; scripts of text stay forbidden.
 * * `blob:` and `data:` for pictures, `blob:` for frames: previews of what the page itself has made (PDF, cards).
 *   A page made from a blob is held to this same policy.
 * * Styles come from files. Attributes `style="…"` in pictures that the page puts in as text are let be: they
 *   can run nothing and reach nothing, as `default-src` leaves them no address to fetch from.
 * * No form is sent anywhere, no page may frame this one, and no `<base>` may bend its addresses.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "style-src-attr 'unsafe-inline'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  'frame-src blob:',
  "form-action 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** What is downloaded is not a page, whatever is in it. */
export const BARE_POLICY = "default-src 'none'; frame-ancestors 'none'; sandbox"

const EVERYWHERE: Readonly<Record<string, string>> = {
  'content-security-policy': POLICY,
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), screen-wake-lock=(self), geolocation=(), microphone=(), usb=()',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
}

const WHERE_TRUSTED = { ...EVERYWHERE, 'cross-origin-opener-policy': 'same-origin' }

/**
 * With every answer, whatever it is. An opener's policy counts only where a browser trusts the address, as it does
 * this machine's own and one with a certificate; elsewhere it would make no more than an error in the console.
 *
 * No `Strict-Transport-Security`: it binds every port of a name for months, and the maker may take the certificate away.
 */
export const safeHeaders = ({ from, scheme }: Entrance): Readonly<Record<string, string>> =>
  from === 'this machine' || scheme === 'https' ? WHERE_TRUSTED : EVERYWHERE

/** With every answer that carries what a maker keeps. */
export const NOT_KEPT: Readonly<Record<string, string>> = { 'cache-control': 'no-store' }
