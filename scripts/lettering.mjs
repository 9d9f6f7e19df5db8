// Writes src/craft/lettering/sourceSans.ts: how wide every letter of the template lettering is.
// Run by hand when @fontsource/source-sans-3 changes: node scripts/lettering.mjs
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import fontkit from '@cantoo/fontkit'

const at = (path) => fileURLToPath(new URL(path, import.meta.url))
const face = (weight) =>
  fontkit.create(
    new Uint8Array(
      readFileSync(
        at(`../node_modules/@fontsource/source-sans-3/files/source-sans-3-latin-${weight}-normal.woff`),
      ),
    ),
  )

// ASCII without controls, Latin-1, and the punctuation that lengths, angles and sentences use.
const letters = []
for (let code = 0x20; code <= 0x7e; code += 1) letters.push(code)
for (let code = 0xa0; code <= 0xff; code += 1) letters.push(code)
letters.push(0x2013, 0x2014, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2026, 0x2032, 0x2033, 0x2044, 0x2212)

const regular = face(400)
const semibold = face(600)
const rows = letters
  .filter((code) => regular.hasGlyphForCodePoint(code) && semibold.hasGlyphForCodePoint(code))
  .map((code) => {
    const widths = [regular, semibold].map((font) => font.glyphForCodePoint(code).advanceWidth)
    return `  0x${code.toString(16).padStart(4, '0')}: [${widths.join(', ')}],`
  })

writeFileSync(
  at('../src/craft/lettering/sourceSans.ts'),
  `/**
 * Source Sans 3 (SIL Open Font License 1.1), as packed in @fontsource/source-sans-3: how far each letter
 * moves the pen, in thousandths of the em, regular and semibold. Made by scripts/lettering.mjs.
 */
export const ADVANCE: Readonly<Record<number, readonly [regular: number, semibold: number]>> = {
${rows.join('\n')}
}

/** Height of a capital in thousandths of the em, the same in both weights. */
export const CAP_HEIGHT = ${regular.capHeight}
`,
)
if (regular.capHeight !== semibold.capHeight || regular.unitsPerEm !== 1000)
  throw new Error('the weights differ')
