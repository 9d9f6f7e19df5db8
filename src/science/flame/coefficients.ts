import type { Coefficient } from '#science/coefficient.ts'

/**
 * Uncertain numbers of the flame and the jets that feed it. `flameRadiation` renews the row of that name with
 * its source.
 */
export const flameCoefficients = {
  flameRadiation: {
    median: 0.15,
    low: 0.08,
    high: 0.25,
    unit: '1',
    meaning: 'share of the heat released in the flame that leaves it by radiation',
    source:
      'NIST burners of 30–37 cm: methane 0.217, methanol 0.226, ethanol 0.275, propane 0.226–0.326 [bib:falkenstein2022]; smaller flames of gas that makes little soot radiate less, from memory',
  },
  flameHeight: {
    median: 1,
    low: 0.75,
    high: 1.35,
    unit: '1',
    meaning: 'true mean flame height over Heskestad’s',
    source:
      'Zukoski’s form is 4–23 % above it between Q* 0.5 and 5; NIST’s methane and propane flames scatter by half [bib:falkenstein2022]; ours are smaller and partly mixed',
  },
  jetPenetration: {
    median: 1.25,
    low: 0.9,
    high: 1.7,
    unit: '1',
    meaning: 'constant of the reach of jets into the wood gas, y = C d √J ṁ_m/(ṁ_m + ṁ_j)',
    source: 'Lefebvre, from memory; band from memory, our jets are laminar',
  },
  jetSpacing: {
    median: 2.5,
    low: 2,
    high: 3.2,
    unit: '1',
    meaning: 'constant of the best number of jets, n = π √(2J)/C',
    source: 'Holdeman 1993 [bib:holdeman1993], form from memory; band from memory',
  },
  swirlForRecirculation: {
    median: 0.6,
    low: 0.4,
    high: 0.7,
    unit: '1',
    meaning: 'swirl number from which gas flows back along the axis',
    source: 'Beér & Chigier 1972 [bib:beer1972]; read in secondary pages, band from memory',
  },
} as const satisfies Record<string, Coefficient>
