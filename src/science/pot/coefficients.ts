import type { Coefficient } from '#science/coefficient.ts'

/** Uncertain numbers of heat into and out of a pot. */
export const potCoefficients = {
  potJetGradient: {
    median: 1.5,
    low: 0.9,
    high: 4,
    unit: '1',
    meaning: 'velocity gradient at the stagnation point under the pot, βd/u of a free jet',
    source:
      'from memory: about 0.8–1 for a uniform jet, 4.6 for a parabolic laminar one (Scholtz & Trass 1970); hot gas over a fire lies between',
  },
  potBottom: {
    median: 1,
    low: 0.7,
    high: 1.4,
    unit: '1',
    meaning: 'true convection to the bottom over the laminar boundary layer’s',
    source: 'from memory: flickering, flame licking the bottom, the stand’s own jets',
  },
  potSideEntrainment: {
    median: 0.08,
    low: 0.05,
    high: 0.13,
    unit: '1',
    meaning: 'entrainment coefficient of the hot sheet that rises along the pot’s side',
    source:
      'a free line plume has 0.11 ± 15 %, Richardson & Hunt 2022 [bib:richardson2022]; a wall on one side lowers it, from memory by a half at most',
  },
  potSideCatch: {
    median: 0.7,
    low: 0.4,
    high: 0.95,
    unit: '1',
    meaning:
      'share of the gas from under the pot that rises along its side rather than past it, no skirt, calm',
    source: 'from memory',
  },
  potSide: {
    median: 1,
    low: 0.6,
    high: 1.5,
    unit: '1',
    meaning: 'true convection to the side over laminar flow along a wall',
    source: 'from memory',
  },
  potSkirtCatch: {
    median: 0.9,
    low: 0.7,
    high: 1,
    unit: '1',
    meaning: 'share of the gas that passes the gap between skirt and pot',
    source: 'from memory',
  },
  potSootEmissivity: {
    median: 0.9,
    low: 0.6,
    high: 0.96,
    unit: '1',
    meaning: 'emissivity of the pot’s bottom and side as used over a fire; a bright new pot has 0.1–0.2',
    source: 'thermal-camera tables: soot 0.94–0.97, from memory',
  },
  potEvaporation: {
    median: 1,
    low: 0.7,
    high: 1.4,
    unit: '1',
    meaning: 'true evaporation from the open pot over Shah’s formula',
    source:
      'mean deviation of the formula from data 18 %, Shah 2002 [bib:shah2002]; a pot is smaller and has a rim',
  },
  potLidLeak: {
    median: 0.1,
    low: 0.03,
    high: 0.3,
    unit: '1',
    meaning: 'steam that escapes under a loose lid over that of the open pot, below boiling',
    source: 'from memory',
  },
  potLidWarmth: {
    median: 0.85,
    low: 0.65,
    high: 0.97,
    unit: '1',
    meaning: 'lid’s excess over the air over the water’s',
    source: 'from memory: steam condenses under it',
  },
} as const satisfies Record<string, Coefficient>

export type PotCoefficients = Readonly<Record<keyof typeof potCoefficients, number>>

/** The medians. */
export const medianPotCoefficients = Object.fromEntries(
  Object.entries(potCoefficients).map(([key, row]) => [key, row.median]),
) as PotCoefficients
