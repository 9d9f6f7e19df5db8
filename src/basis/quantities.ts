import { type Kind, siUnits, type UnitSymbol } from './unitTable.ts'

/** One row of the table of quantities: what it is, how it is written, and between which bounds it makes sense. */
export interface Quantity<K extends Kind = Kind> {
  readonly kind: K
  /** In a sentence: "a hole diameter of 16 mm". */
  readonly name: string
  /** In a formula or a narrow table. */
  readonly symbol: string
  readonly siUnit: (typeof siUnits)[K]
  /** Units to show it in; the first is the usual one. Empty for bare numbers. */
  readonly displayUnits: readonly UnitSymbol<K>[]
  /** One sentence a maker understands. */
  readonly description: string
  /** Lowest value that makes sense [siUnit]. */
  readonly min: number
  /** Highest value that makes sense [siUnit]. */
  readonly max: number
}

const row =
  <K extends Kind>(kind: K, displayUnits: readonly UnitSymbol<K>[]) =>
  (name: string, symbol: string, min: number, max: number, description: string): Quantity<K> => ({
    kind,
    name,
    symbol,
    siUnit: siUnits[kind],
    displayUnits,
    description,
    min,
    max,
  })

const lengthInMetres = row('length', ['mm', 'in'])
/** A length of a part, its bounds given in millimetres for the reader's sake. */
const length = (name: string, symbol: string, min: number, max: number, description: string) =>
  lengthInMetres(name, symbol, min / 1000, max / 1000, description)
const height = row('length', ['m', 'ft'])
const area = row('area', ['mm²', 'in²'])
const capacity = row('volume', ['mL', 'US fl oz'])
const volume = row('volume', ['L', 'US qt'])
const mass = row('mass', ['g', 'oz'])
const density = row('density', ['kg/m³', 'lb/ft³'])
const time = row('time', ['min', 'h', 's'])
const velocity = row('velocity', ['m/s', 'km/h', 'mph'])
const gasFlow = row('massFlow', ['g/s', 'kg/h', 'lb/h'])
const fuelFlow = row('massFlow', ['g/min', 'kg/h', 'lb/h'])
const massFlux = row('massFlux', ['kg/(m² s)'])
const pressure = row('pressure', ['Pa'])
const atmosphere = row('pressure', ['hPa', 'kPa', 'mbar', 'inHg'])
const temperature = row('temperature', ['°C', '°F', 'K'])
const temperatureDifference = row('temperatureDifference', ['K', '°F'])
const energy = row('energy', ['MJ', 'kWh', 'Btu'])
const specificEnergy = row('specificEnergy', ['MJ/kg', 'Btu/lb'])
const power = row('power', ['kW', 'Btu/h'])
const heat = row('power', ['W', 'Btu/h'])
const angle = row('angle', ['°'])
const share = row('share', ['%'])
const ratio = row('ratio', [])
const count = row('count', [])

/**
 * The one table of quantities: the stove file, messages, help, labels and plans all read it.
 *
 * Bounds are what a stove made of salvaged cans can mean, from a film tube to a 20 litre pail; they stop slips
 * of unit and of the decimal point. They are from memory of the trade, not a standard: widen one when a real
 * can or fuel falls outside.
 */
// biome-ignore format: one row, one line: it is a table
export const quantities = {
  // A can, as bought and as measured
  canSeamDiameter: length('seam diameter', 'Ds', 30, 400, 'Outside diameter of the can over its double seam, the widest place.'),
  canBodyDiameter: length('body diameter', 'Db', 30, 400, 'Outside diameter of the plain wall of the can, away from seams and beads.'),
  canHeight: length('can height', 'H', 10, 600, 'Height of the can over both seams, or as trimmed.'),
  bodyWall: length('wall thickness', 'tb', 0.05, 2, 'Thickness of the sheet the can wall is made of.'),
  endWall: length('end thickness', 'te', 0.05, 2, 'Thickness of the sheet the can end is made of.'),
  seamHeight: length('seam height', 'hs', 0, 10, 'Height of one double seam along the wall.'),
  beadHeight: length('bead height', 'zb', 0, 600, 'Where a stretch of rolled beads begins or ends, above the bottom edge of the can.'),
  endOpening: length('end opening', 'Do', 10, 400, 'Diameter of the hole left in a can end: inside the ledge of a pull-off lid, or inside the ring of a lever lid.'),
  countersink: length('countersink depth', 'hc', 0, 20, 'How far the panel of a seamed end lies inside the edge of the can.'),
  circumference: length('circumference', 'U', 90, 1260, 'Way round the outside of the can.'),
  tolerance: length('tolerance', '±', 0, 10, 'How far the true length may lie from the one written down, either way.'),
  capacity: capacity('capacity', 'V', 1e-5, 0.06, 'Liquid the can holds when full to the brim.'),

  // Openings
  bitDiameter: length('bit diameter', 'd', 0.1, 80, 'Diameter of a drill bit, of one step of a step drill, or of a punch.'),
  holeDiameter: length('hole diameter', 'd', 0.5, 60, 'Diameter of one round hole, as drilled or punched.'),
  boreDiameter: length('bore diameter', 'd', 3, 390, 'Diameter of the one round hole in the middle of a disc or an end.'),
  holeHeight: length('height of the opening', 'z', 0, 600, 'Middle of the opening above the bottom edge of its own part, as it stands in the stove.'),
  windowWidth: length('window width', 'w', 1, 200, 'Width of a square-topped window, measured round the can.'),
  windowHeight: length('window height', 'h', 1, 400, 'Height of a window from its foot to its top.'),
  slitWidth: length('slit width', 'w', 0.2, 20, 'Width of a slit across its narrow way.'),
  slitLength: length('slit length', 'l', 1, 300, 'Length of a slit along its long way.'),
  holeCount: count('number of holes', 'n', 1, 400, 'Positions of a row all the way round the can, left-out ones included.'),
  patternCount: count('number of holes', 'n', 1, 5000, 'Holes of a floor pattern, all together.'),
  position: count('number of a position', 'i', 1, 400, 'Number of one position in a row, counted clockwise from the first.'),
  bearing: angle('bearing', 'β', -360, 360, 'Where something sits round the can, clockwise seen from above, from the front mark.'),
  ringRadius: length('ring radius', 'r', 0.5, 195, 'From the middle of the disc to the middle of the holes of one ring.'),
  patternPitch: length('pattern pitch', 'p', 1, 200, 'Distance from the middle of one hole of a floor pattern to the middle of the next.'),
  patternMargin: length('pattern margin', 'm', 0, 200, 'Ring left without holes between a floor pattern and the edge of its disc.'),
  vaneCount: count('number of vanes', 'n', 2, 60, 'Slits of a concentrator that are bent into vanes.'),
  vaneAngle: angle('vane angle', 'θ', 0, 90, 'How far a vane is bent out of its disc; 0 is not bent.'),
  vaneInnerRadius: length('inner radius of the vanes', 'ri', 0, 195, 'From the middle of the disc to the inner end of a vane.'),
  vaneOuterRadius: length('outer radius of the vanes', 'ro', 1, 200, 'From the middle of the disc to the outer end of a vane.'),
  vaneWidth: length('vane width', 'w', 0.5, 100, 'Width of one vane, measured round the disc.'),

  // Discs, bands and the assembly
  discDiameter: length('disc diameter', 'D', 10, 400, 'Outside diameter of a flat disc.'),
  sheetThickness: length('sheet thickness', 't', 0.05, 6, 'Thickness of the sheet a disc or band is cut from.'),
  bandHeight: length('band height', 'h', 3, 300, 'Height of the strip of tin that turns on the shell as a damper.'),
  raised: length('raised height', 'z', 0, 600, 'How far a part stands above the ground, the floor or the bottom edge it belongs to.'),
  clearance: length('clearance', 'c', -400, 400, 'Room left between two parts; less than nothing means they bite.'),
  ligament: length('tin left', 'b', -400, 400, 'Tin left between an opening and its neighbour, an edge, a seam or a bead.'),
  potDiameter: length('pot diameter', 'Dp', 40, 600, 'Outside diameter of the pot the stove is built for.'),
  potGap: length('pot gap', 'hg', 0, 100, 'Space between the top rim of the stove and the bottom of the pot, where it stands on rods or screws.'),
  openArea: area('open area', 'A', 0, 0.2, 'Area of all the openings of a row or pattern, added up.'),
  areaRatio: ratio('area ratio', 'a', 0, 1000, 'One open area divided by another.'),
  mass: mass('weight', 'm', 0, 100, 'What the kitchen scale shows.'),
  printerClearance: length('printer clearance', 'cp', 0, 3, 'Left free on the diameter between a printed guide and a can, for what a printer lays down too wide.'),
  guideWall: length('wall of a guide', 'tg', 2, 25.4, 'Length of the bit that a printed drill guide holds.'),
  pilotBit: length('pilot bit', 'dp', 1, 10, 'Diameter of the bit that a hole is started with.'),
  printerBed: length('side of the printer bed', 'bp', 40, 2000, 'Room that a printer has to one side, or upwards.'),
  chordalError: length('chordal error', 'ec', 0.001, 1, 'How far the middle of a flat facet may lie inside the round surface it stands for.'),
  packedVolume: volume('packed volume', 'V', 0, 0.3, 'Room the bundle of nested parts takes in a pack.'),

  // Fuel, water and weather
  fuelLevel: length('fuel level', 'hf', 1, 600, 'Top of the fuel above the floor it lies on.'),
  fuelMoisture: share('fuel moisture', 'M', 0, 0.6, 'Water in the fuel as a share of its weight as it is, water included.'),
  fuelFines: share('share of fines', 'f', 0, 0.2, 'Broken bits and dust in the fuel as a share of its weight.'),
  fuelWeight: mass('weight of the fuel', 'm', 0.0001, 50, 'Fuel alone on the scale, vessel taken off.'),
  filledVolume: volume('volume filled', 'V', 2e-5, 0.06, 'Room the fuel takes in the vessel it was weighed in.'),
  pieceSize: length('size of a piece', 'l', 0.5, 600, 'Diameter, length, width or thickness of one piece of fuel, the middling one of a handful.'),
  pieceCount: count('number of pieces', 'n', 1, 10_000, 'Pieces of fuel weighed together.'),
  ashShare: share('ash content', 'a', 0, 0.5, 'Ash the dry fuel leaves when it has burnt out.'),
  bulkDensity: density('bulk density', 'ρb', 30, 1500, 'Weight of the fuel in a full can, divided by the volume of the can.'),
  particleDensity: density('particle density', 'ρp', 100, 1600, 'Weight of one piece of fuel, divided by its volume.'),
  particleSize: length('particle size', 'dp', 0.2, 100, 'Size of the pieces of fuel: diameter of the ball with as much volume for its surface.'),
  voidFraction: share('void fraction', 'ε', 0.1, 0.98, 'Share of the fuel bed that is air between the pieces.'),
  heatingValue: specificEnergy('heating value', 'LHV', 0, 50e6, 'Heat one kilogram of the fuel gives when it burns and its steam escapes.'),
  waterVolume: volume('water volume', 'Vw', 1e-5, 0.05, 'Water in the pot.'),
  waterTemperature: temperature('water temperature', 'Tw', 268.15, 383.15, 'Temperature of the water in the pot.'),
  skirtGap: length('skirt gap', 'gs', 1, 60, 'Room between the side of the pot and a skirt bent round it.'),
  skirtHeight: length('skirt height', 'hk', 5, 400, 'Height of the skirt beside the pot.'),
  timeAfterLighting: time('time after lighting', 't', 0, 43_200, 'Time since the fuel was lit.'),
  tripDays: count('number of days', 'n', 1, 365, 'Days the fuel is to last for.'),
  boilsPerDay: count('number of boils a day', 'n', 1, 50, 'How often water is brought to the boil on one day.'),
  ambientTemperature: temperature('air temperature', 'T0', 243.15, 323.15, 'Temperature of the air outside, in the shade.'),
  altitude: height('altitude', 'z', -430, 5000, 'Height above the sea: the higher, the thinner the air and the cooler the boil.'),
  airPressure: atmosphere('air pressure', 'p0', 50_000, 110_000, 'Pressure of the air where the stove stands, not reduced to sea level.'),
  relativeHumidity: share('relative humidity', 'φ', 0, 1, 'Water vapour in the air as a share of the most it could hold.'),
  windSpeed: velocity('wind speed', 'u', 0, 30, 'Speed of the wind at the height of the stove.'),

  // Answers: air and gas
  massFlow: gasFlow('mass flow', 'ṁ', -0.5, 0.5, 'Air or gas that passes in a second; below nothing it runs backwards.'),
  velocity: velocity('velocity', 'u', -100, 100, 'Speed of the air or gas in an opening; below nothing it runs backwards.'),
  superficialVelocity: velocity('superficial velocity', 'us', -10, 10, 'Speed the primary air would have in the fuel can if it were empty.'),
  pressure: pressure('pressure', 'p', -1000, 1000, 'Pressure above that of the air outside at the same height.'),
  airSplit: share('air split', 's', 0, 1, 'Share of all the air that takes one way: through the fuel, or into the gas above it.'),
  airRatio: ratio('air ratio', 'λ', 0, 100, 'Air that is there, divided by the air needed to burn everything.'),
  swirlNumber: ratio('swirl number', 'S', 0, 10, 'How strongly the gas whirls: spin divided by push.'),
  reynoldsNumber: ratio('Reynolds number', 'Re', 0, 1e6, 'Whether a flow is smooth or eddying.'),
  dischargeCoefficient: ratio('discharge coefficient', 'Cd', 0, 1, 'Flow a real hole passes, divided by what a perfect one would.'),
  residual: ratio('relative residual', 'r', 0, 1, 'What is left over when a balance is added up, divided by what went in.'),
  bandSets: count('number of sets', 'N', 0, 10_000, 'How often a prediction is made again with other coefficients, to draw its bands.'),

  // Answers: fire and heat
  firepower: power('firepower', 'P', 0, 100e3, 'Heat the fire gives off each second.'),
  fuelRate: fuelFlow('fuel rate', 'ṁf', 0, 0.05, 'Fuel that burns away each minute.'),
  fuelFlux: massFlux('fuel flux', 'ṁ″', 0, 1, 'Fuel that burns away each second on a square metre of the fuel can.'),
  charYield: share('char left', 'Y', 0, 1, 'Char the front leaves behind, as a share of the dry fuel.'),
  burnTime: time('burn time', 't', 0, 43_200, 'Time from lighting until the front has reached the floor.'),
  turndown: ratio('turndown', 'TDR', 1, 100, 'Highest steady firepower divided by the lowest.'),
  flameTemperature: temperature('flame temperature', 'Tf', 200, 3000, 'Temperature of the burning gas, mixed through.'),
  gasTemperature: temperature('gas temperature', 'T', 200, 3000, 'Temperature of the air or gas at one place.'),
  wallTemperature: temperature('wall temperature', 'Tw', 200, 1800, 'Temperature of the tin at one place.'),
  temperatureRise: temperatureDifference('temperature rise', 'ΔT', -2000, 3000, 'How much hotter something is than before.'),
  flameHeight: length('flame height', 'Lf', 0, 2000, 'From where the gas burns to the tip of the flame.'),
  heatFlow: heat('heat flow', 'Q', -100e3, 100e3, 'Heat that passes each second.'),
  heat: energy('heat', 'E', 0, 5e9, 'Heat given off or taken up, all together.'),
  efficiency: share('efficiency', 'η', 0, 1, 'Share of the heat of the fuel that ends up in the water.'),
} as const satisfies Record<string, Quantity>

export type QuantityKey = keyof typeof quantities

/** The row of a quantity, with the wide type that loops and readers want. */
export const quantity = (key: QuantityKey): Quantity => quantities[key]
