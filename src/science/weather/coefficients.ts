import type { Coefficient } from '#science/coefficient.ts'

/** Uncertain numbers of wind on a stove. */
export const windCoefficients = {
  windSuctionShare: {
    median: 0.6,
    low: 0.4,
    high: 0.9,
    unit: '1',
    meaning: 'suction at the sides and back of a short can over that of an endless cylinder',
    source:
      'cans of height/diameter 1 have −1.4 at the side and −0.45 at the back at high Reynolds number, AS/NZS 1170.2 appendix C [bib:asnzs1170] after Macdonald, Kwok & Holmes 1988; an endless cylinder −1.05 at the back. Median from memory of the drag of short cylinders, about half the endless one’s',
  },
  windOpenTop: {
    median: -0.6,
    low: -0.9,
    high: -0.3,
    unit: '1',
    meaning: 'pressure coefficient over the open top of a can or chimney',
    source:
      'EN 1991-1-4 7.2.9: −0.60 for open silos and chimneys, −0.40 for vented tanks [bib:en1991wind]; from memory',
  },
  windScreen: {
    median: 0.3,
    low: 0.15,
    high: 0.6,
    unit: '1',
    meaning: 'share of the wind’s speed that is left behind a screen as high as the stove, close to windward',
    source:
      'from memory: windbreaks leave about a quarter at their best place; a gap or a wind from aside leaves more',
  },
} as const satisfies Record<string, Coefficient>
