import type { QuantityKey } from '#basis/quantities.ts'

/** Where the numbers of a quantity come from. */
export interface Origin {
  readonly from: string
  /** Keys of docs/references.bib. */
  readonly sources: readonly string[]
}

const origin = (from: string, ...sources: readonly string[]): Origin => ({ from, sources })

const TAPE = origin('You measure it on the can, or its size code says it.', 'cmi', 'md0708', 'iso90')
const CHOSEN = origin('You choose it; the check says what tin and hand drill make of it.')
const DRAWN = origin('Worked out from your measures by plain geometry.')
const LAID_OUT = origin('You choose it; holes are laid out by plain geometry.')
const WEIGHED = origin(
  'You weigh or measure it; without that, the table of fuels says what is usual.',
  'briggs1994',
)
const WEATHER = origin('You say it; otherwise a calm day at 15 °C by the sea is taken.', 'ussa1976')
const PRINTER = origin('You choose it for your printer; usual values are common practice, without a source.')
const FLOWS = origin(
  'Worked out: the draught of the hot gas against what every opening takes, balanced to a billionth.',
  'rennels2012',
  'idelchik1986',
  'ergun1952',
)
const HEAT = origin(
  'Worked out: the heat of the gases is known to a fraction of a per cent, what walls and light take is less sure.',
  'mcbride1993',
  'churchill1975',
)
const FRONT = origin(
  'Worked out from the air that reaches the front; how much air a kilogram of fuel takes was measured on a few stoves.',
  'mehta2017',
  'reed1996',
)
const POT = origin(
  'Worked out; nearly all of what the pot takes rests on numbers from memory, so trust its band, not its middle.',
  'richardson2022',
  'iapws2012',
)
const BOOKKEEPING = origin('Counted by the program itself.')

/** For every quantity, where its numbers come from: docs/physics.md in one line each. */
export const ORIGINS: Readonly<Record<QuantityKey, Origin>> = {
  canSeamDiameter: TAPE,
  canBodyDiameter: TAPE,
  canHeight: TAPE,
  bodyWall: origin(
    'You measure it with a caliper; otherwise what can makers state is taken.',
    'cmi',
    'levapack',
  ),
  endWall: origin(
    'You measure it with a caliper; otherwise what can makers state is taken.',
    'cmi',
    'levapack',
  ),
  seamHeight: origin(
    'You measure it; otherwise what makers of double seams state is taken.',
    'cfia',
    'bluebook',
  ),
  beadHeight: TAPE,
  endOpening: TAPE,
  countersink: TAPE,
  circumference: DRAWN,
  tolerance: origin(
    'You say how sure you are of a measure; a tape measure is good to about half a millimetre, common practice.',
  ),
  capacity: DRAWN,
  bitDiameter: origin('It stands on the bit.', 'asmeb9411'),
  holeDiameter: CHOSEN,
  boreDiameter: CHOSEN,
  holeHeight: CHOSEN,
  windowWidth: CHOSEN,
  windowHeight: CHOSEN,
  slitWidth: CHOSEN,
  slitLength: CHOSEN,
  holeCount: CHOSEN,
  patternCount: origin('You choose it; holes of a sunflower pattern lie at the golden angle.', 'vogel1979'),
  position: LAID_OUT,
  bearing: LAID_OUT,
  ringRadius: LAID_OUT,
  patternPitch: LAID_OUT,
  patternMargin: LAID_OUT,
  vaneCount: CHOSEN,
  vaneAngle: CHOSEN,
  vaneInnerRadius: CHOSEN,
  vaneOuterRadius: CHOSEN,
  vaneWidth: CHOSEN,
  discDiameter: CHOSEN,
  sheetThickness: origin('You measure it with a caliper; about the thickness of the can it is cut from.'),
  bandHeight: CHOSEN,
  raised: DRAWN,
  clearance: DRAWN,
  ligament: DRAWN,
  potDiameter: origin('You measure your pot.'),
  potGap: CHOSEN,
  openArea: DRAWN,
  areaRatio: origin(
    'Worked out by plain geometry; which ratios makers begin from is common practice, without a source.',
  ),
  mass: origin('You weigh it, or it follows from the sheet and the density of steel.', 'bluebook'),
  printerClearance: PRINTER,
  guideWall: PRINTER,
  pilotBit: origin(
    'You choose it; a pilot of about a third of the hole is common practice, without a source.',
  ),
  printerBed: PRINTER,
  chordalError: PRINTER,
  packedVolume: DRAWN,
  fuelLevel: CHOSEN,
  fuelMoisture: origin('You measure it, by weighing before and after an oven or with a meter.'),
  fuelFines: origin(
    'You sieve and weigh them; what they do to the air was measured on pellets.',
    'yazdanpanah2010',
  ),
  fuelWeight: WEIGHED,
  filledVolume: WEIGHED,
  pieceSize: WEIGHED,
  pieceCount: WEIGHED,
  ashShare: origin('From analyses of the fuel, where there is one.', 'raveendran1995'),
  bulkDensity: origin(
    'You weigh a full can; otherwise the table of fuels says what is usual.',
    'iso17225',
    'benyahia2005',
  ),
  particleDensity: origin(
    'You weigh and measure a few pieces; otherwise the table of fuels.',
    'pelletproperties2007',
    'briggs1994',
  ),
  particleSize: origin('Worked out from the size of the pieces as bed formulas want it.', 'ergun1952'),
  voidFraction: origin('Worked out from the weight of a full can; looser beside the wall.', 'benyahia2005'),
  heatingValue: origin(
    'From what the dry fuel is made of, or measured; less what its water takes.',
    'channiwala2002',
    'raveendran1995',
  ),
  waterVolume: origin('You measure it.'),
  waterTemperature: origin(
    'You measure it; in a prediction it follows from the heat that reaches the water.',
    'iapws2012',
  ),
  skirtGap: CHOSEN,
  skirtHeight: CHOSEN,
  timeAfterLighting: origin('Counted from the moment the fuel is lit.'),
  tripDays: CHOSEN,
  boilsPerDay: CHOSEN,
  ambientTemperature: WEATHER,
  altitude: WEATHER,
  airPressure: WEATHER,
  relativeHumidity: origin('You say it; the density of moist air follows from it.', 'picard2008'),
  windSpeed: origin(
    'You say it, at the stove: about 0.4 of what a forecast tells for ten metres.',
    'wieringa1993',
    'asnzs1170',
  ),
  massFlow: FLOWS,
  velocity: FLOWS,
  superficialVelocity: FLOWS,
  pressure: origin(
    'Worked out: hot gas is light, and its lightness is the only pump there is; one or two pascals.',
    'lemmon2004',
  ),
  airSplit: FLOWS,
  airRatio: origin('Worked out from the flows and what the gas is made of.', 'mcbride1993'),
  swirlNumber: origin('Worked out from angle and radii of the vanes.', 'beer1972'),
  reynoldsNumber: FLOWS,
  dischargeCoefficient: origin(
    'A sharp hole in thin sheet, measured in pipes with faster flow.',
    'rennels2012',
    'idelchik1986',
  ),
  residual: BOOKKEEPING,
  bandSets: origin('Every uncertain number is drawn anew within its range, again and again.', 'mckay1979'),
  firepower: origin(
    'Worked out: primary air makes so much gas, and the gas has so much heat.',
    'mehta2017',
    'channiwala2002',
  ),
  fuelRate: FRONT,
  fuelFlux: FRONT,
  charYield: origin(
    'Measured on a few stoves in a natural draught: 20 to 25 % of the dry fuel.',
    'reed1996',
    'james2016',
  ),
  burnTime: origin(
    'Worked out: the front walks through as much fuel as its air lets it turn to gas.',
    'mehta2017',
  ),
  turndown: origin('Worked out with the damper open and as far shut as the fire stays clean.'),
  flameTemperature: origin(
    'Worked out: the gas burns with the air it meets, less a share that is shone away.',
    'mcbride1993',
    'falkenstein2022',
  ),
  gasTemperature: HEAT,
  wallTemperature: HEAT,
  temperatureRise: HEAT,
  flameHeight: origin(
    'From fires on burners; nobody measured one as small as the bore of a can.',
    'heskestad1984',
  ),
  heatFlow: HEAT,
  heat: HEAT,
  efficiency: POT,
}
