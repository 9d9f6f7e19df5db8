import encodeQR from 'qr'

/** An address as a QR code, for a screen: dark on light, whatever the page looks like. */
export const qrPicture = (address: string): string =>
  encodeQR(address, 'svg', { ecc: 'medium', border: 4 }).replace(
    '<path',
    '<rect width="100%" height="100%" fill="#fff"/><path fill="#000"',
  )

/** White on black, whatever the terminal's own colours are. */
const LIGHT_ON_DARK = '\u001b[97;40m'
const AS_BEFORE = '\u001b[0m'

/** The same in half-blocks, for a terminal; each block is a light square. */
export const qrLetters = (address: string): string =>
  encodeQR(address, 'ascii', { ecc: 'low', border: 2 })
    .trimEnd()
    .split('\n')
    .map((line) => `${LIGHT_ON_DARK}${line}${AS_BEFORE}\n`)
    .join('')
