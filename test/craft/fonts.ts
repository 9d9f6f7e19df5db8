import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { LetteringFonts } from '#craft/pdf/face.ts'

const require = createRequire(import.meta.url)
const file = (script: string, weight: number): Uint8Array =>
  new Uint8Array(
    readFileSync(
      require.resolve(`@fontsource/source-sans-3/files/source-sans-3-${script}-${weight}-normal.woff`),
    ),
  )

/** The lettering as the command line gives it to the writer: the script most used first. */
const scripts = ['latin', 'latin-ext', 'greek', 'cyrillic']

export const fonts: LetteringFonts = {
  regular: scripts.map((script) => file(script, 400)),
  semibold: scripts.map((script) => file(script, 600)),
}
