import encodeQR from 'qr'
import { element } from '../svg/element.ts'

/** White round the code, in modules: ISO/IEC 18004 asks for four, from memory. */
const QUIET = 4

export interface CodePicture {
  readonly svg: string
  /** Modules across, the white around left out. */
  readonly modules: number
}

/** A text as a QR code, black on white, at the lowest error correction: a plan's code is large and lies flat. */
export const codePicture = (text: string): CodePicture => {
  const rows = encodeQR(text, 'raw', { ecc: 'low', border: QUIET })
  const size = rows.length
  // One run of modules a stroke: fewer seams for a printer than squares.
  const d = rows
    .flatMap((row, y) => {
      const runs: string[] = []
      for (let x = 0; x < row.length; ) {
        if (!row[x]) {
          x += 1
          continue
        }
        let end = x
        while (row[end]) end += 1
        runs.push(`M${x} ${y}h${end - x}v1h${x - end}z`)
        x = end
      }
      return runs
    })
    .join('')
  const svg = element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${size} ${size}`, width: size, height: size },
    element('rect', { width: size, height: size, fill: '#ffffff' }) + element('path', { d, fill: '#000000' }),
  )
  return { svg, modules: size - 2 * QUIET }
}
