import type { Course } from '#science/answers/course.ts'

/** How a burn goes, in a maker's words, and what to make of it. */
export const COURSES: Readonly<Record<Course, { readonly name: string; readonly meaning: string }>> = {
  clean: {
    name: 'Burns clean',
    meaning: 'The gas finds the air it needs. No promise of clean air: outdoors only.',
  },
  smoulder: {
    name: 'Smoulders',
    meaning: 'Too little air comes up through the fuel: smoke, and a flame that may not hold.',
  },
  'rich and smoky': {
    name: 'Rich and smoky',
    meaning: 'Too little air for the gas: part of it leaves unburnt.',
  },
  'quenched lean': {
    name: 'Chilled by its air',
    meaning: 'So much air falls on the gas that it may put the flame out.',
  },
  'goes out before the floor': {
    name: 'Goes out on the way',
    meaning: 'The front does not reach the floor of the fuel can.',
  },
  'does not burn': { name: 'Does not burn', meaning: '' },
}
