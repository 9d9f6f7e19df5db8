import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { coefficientsPage } from './validation/coefficientsPage.ts'
import { validationPage } from './validation/page.ts'

export const DOCS = join(import.meta.dirname, '..', 'docs')

/** File name of each page that the code makes, and what makes it. */
const pages: Readonly<Record<string, () => string>> = {
  'validation.md': validationPage,
  'coefficients.md': coefficientsPage,
}

export const pageNames = Object.keys(pages)

/** A page of `docs` made anew. */
export const madePage = (name: string): string => {
  const make = pages[name]
  if (make === undefined) throw new Error(`No page ${name}`)
  return make()
}

// Writes the pages anew: `node scripts/validation.ts`. A test says when that is due.
if (import.meta.main)
  for (const name of pageNames) {
    const path = join(DOCS, name)
    writeFileSync(path, madePage(name))
    console.log(path)
  }
