import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { burnFigure } from './figures/burn.ts'
import { charFigure } from './figures/char.ts'
import { flameTemperatureFigure } from './figures/flameTemperature.ts'
import { floorFigure } from './figures/floor.ts'
import { frontFigure } from './figures/front.ts'
import { guessesFigure } from './figures/guesses.ts'
import type { Figure } from './figures/kit/page.ts'
import { pathFigure } from './figures/path.ts'
import { riserFigure } from './figures/riser.ts'
import { splitFigure } from './figures/split.ts'
import { windFigure } from './figures/wind.ts'

export const PICTURES = join(import.meta.dirname, '..', 'docs', 'pictures')

/** File name of each figure of docs/physics.md, and what draws it. */
const figures: Readonly<Record<string, () => Figure>> = {
  'physics-path.svg': pathFigure,
  'physics-floor.svg': floorFigure,
  'physics-split.svg': splitFigure,
  'physics-front.svg': frontFigure,
  'physics-flame.svg': flameTemperatureFigure,
  'physics-riser.svg': riserFigure,
  'physics-wind.svg': windFigure,
  'physics-char.svg': charFigure,
  'physics-burn.svg': burnFigure,
  'physics-guesses.svg': guessesFigure,
}

export const figureNames = Object.keys(figures)

/** A figure made anew. */
export const madeFigure = (name: string): Figure => {
  const make = figures[name]
  if (make === undefined) throw new Error(`No figure ${name}`)
  return make()
}

// Writes the figures anew: `node scripts/figures.ts`. A test says when that is due.
if (import.meta.main) {
  mkdirSync(PICTURES, { recursive: true })
  const wanted = process.argv.slice(2)
  for (const name of figureNames.filter((each) => wanted.length === 0 || wanted.includes(each))) {
    const path = join(PICTURES, name)
    writeFileSync(path, madeFigure(name).svg)
    console.log(path)
  }
}
