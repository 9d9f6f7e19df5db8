/** How a metric is spoken of. `d` is an amount in both systems; `water` what was boiled, such as `1 L (1.06 US qt)`. */
export interface MetricWords {
  /** Ends a sentence that began with a variant: `boils 1 L 1.9 min sooner`. */
  readonly less: (d: string, water: string) => string
  readonly more: (d: string, water: string) => string
  /** After an amount: `sooner`, `later`. */
  readonly lessWord: string
  readonly moreWord: string
  /** In the middle of a sentence. */
  readonly noun: string
}

const scaled = (
  noun: string,
  verb: (d: string, way: string, water: string) => string,
  [lessWord, moreWord]: readonly [string, string],
): MetricWords => ({
  noun,
  lessWord,
  moreWord,
  less: (d, water) => verb(d, lessWord, water),
  more: (d, water) => verb(d, moreWord, water),
})

const LESS_MORE = ['less', 'more'] as const
const EVENED = 'start temperature evened out'

const WORDS: Readonly<Record<string, MetricWords>> = {
  timeToBoil: scaled('time to boil', (d, way, water) => `boils ${water} ${d} ${way}`, ['sooner', 'later']),
  timeToBoilT: scaled(
    `time to boil, ${EVENED}`,
    (d, way, water) => `boils ${water} ${d} ${way} (${EVENED})`,
    ['sooner', 'later'],
  ),
  fuelBurnt: scaled('fuel burnt', (d, way) => `burns ${d} ${way} fuel`, LESS_MORE),
  fuelEnergy: scaled('energy of the fuel burnt', (d, way) => `burns fuel worth ${d} ${way}`, LESS_MORE),
  dryFuel: scaled(
    'dry fuel used, char taken off',
    (d, way) => `uses ${d} ${way} dry fuel, its char taken off`,
    LESS_MORE,
  ),
  efficiencyNoChar: scaled(
    'efficiency, char counted as burnt',
    (d, way) => `gets ${d} ${way} of the heat of its fuel into the water (char counted as burnt)`,
    LESS_MORE,
  ),
  efficiency: scaled(
    'efficiency, char counted as left',
    (d, way) => `gets ${d} ${way} of the heat of its fuel into the water (char counted as left)`,
    LESS_MORE,
  ),
  burningRate: scaled('burning rate', (d, way) => `burns ${d} ${way}`, ['slower', 'faster']),
  firepower: scaled('firepower', (d, way) => `burns ${d} ${way}`, ['weaker', 'stronger']),
  usefulPower: scaled('heat into the water', (d, way) => `gives the water ${d} ${way}`, LESS_MORE),
  specificFuel: scaled('fuel a litre', (d, way) => `needs ${d} ${way} dry fuel`, LESS_MORE),
  specificFuelT: scaled(
    `fuel a litre, ${EVENED}`,
    (d, way) => `needs ${d} ${way} dry fuel (${EVENED})`,
    LESS_MORE,
  ),
  specificEnergyT: scaled(
    `energy a litre, ${EVENED}`,
    (d, way) => `needs ${d} ${way} energy (${EVENED})`,
    LESS_MORE,
  ),
  charYield: scaled('char by weight of the fuel', (d, way) => `leaves ${d} ${way} char by weight`, LESS_MORE),
  charEnergyYield: scaled(
    'energy left in the char',
    (d, way) => `leaves ${d} ${way} of the energy in the char`,
    LESS_MORE,
  ),
  turndown: scaled('turndown', (d, way) => `turns down ${d} ${way}`, ['less far', 'further']),
}

/** Words of a metric, by its key. */
export const metricWords = (key: string): MetricWords => {
  const found = WORDS[key]
  if (found === undefined) throw new Error(`No words for ${key}`)
  return found
}
