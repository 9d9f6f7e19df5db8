import { changed, type Files } from './memory.ts'

/** Stoves that are read well and give an answer that is not a good one. */
interface Part {
  [key: string]: unknown
  openings: Record<string, Record<string, unknown>>
}
const partOf = (stove: { readonly [key: string]: unknown }, name: string): Part =>
  (stove.parts as Record<string, Part>)[name] as Part

export const spoiltStoves: Files = {
  // The seam of a plain bottom does not pass the ring that the can has to go through.
  'stop.json': changed('redshank.stove.json', (stove) => {
    partOf(stove, 'fuel can').bottom = { end: 'plain' }
  }),
  // One hole as wide as a needle feeds the fuel.
  'starved.json': changed('redshank.stove.json', (stove) => {
    partOf(stove, 'fuel can').openings.floor = {
      kind: 'bore',
      duty: 'primary',
      face: 'bottom',
      diameter: '3 mm',
    }
  }),
  // Whole bottom: no air reaches the fuel.
  'no-floor.json': changed('redshank.stove.json', (stove) => {
    delete partOf(stove, 'fuel can').openings.floor
  }),
}

/** A stove file whose only fault is a fuel that nobody knows. */
export const unknownFuel: string = changed('redshank.stove.json', (stove) => {
  Object.assign(stove.fuel ?? {}, { kind: 'coal' })
})
