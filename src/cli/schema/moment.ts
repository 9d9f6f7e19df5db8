import * as z from 'zod'
import { perhaps, quantity, regime, word } from './plain.ts'

const passage = z.strictObject({
  name: word('What it is called on the page.'),
  kind: z.enum(['opening', 'throat', 'gap', 'bed']),
  part: z.string().nullable().describe('Part it is cut in; null for a gap or a throat between parts.'),
  opening: z.string().nullable().describe('Name of the opening in the stove file.'),
  duty: z
    .enum(['intake', 'primary', 'secondary', 'tertiary', 'outlet', 'passage', 'fixing'])
    .nullable()
    .describe('What it is for, as the stove file says.'),
  from: z.int().nullable().describe('Index in `spaces` that positive flow comes from; null is the open air.'),
  to: z.int().nullable().describe('Index in `spaces` that positive flow goes to; null is the open air.'),
  height: quantity('m', 'Above the ground; of a gap or the bed, its lower end'),
  count: quantity('1', 'How many openings'),
  area: quantity('m²', 'Free area of all of them'),
  hydraulicDiameter: quantity('m', 'Of one opening'),
  massFlow: quantity('kg/s', 'Air or gas that passes; positive into the stove or up through it'),
  backFlow: quantity('kg/s', 'Part of it that runs the other way, through holes on the other side'),
  velocity: quantity('m/s', 'In the opening; over the cross-section of a bed'),
  reynolds: quantity('1', 'Reynolds number'),
  pressureDrop: quantity('Pa', 'Pressure that drives it, buoyancy counted in'),
  lossShare: quantity(
    '1',
    'Share of the draught’s work that its net flow takes; wind straight through a row is not counted',
  ),
  temperature: quantity('K', 'Of what passes'),
})

const jet = z.strictObject({
  part: word('Part the row is cut in.'),
  opening: word('Name of the row.'),
  count: quantity('1', 'Jets'),
  momentumRatio: quantity('1', 'Momentum of the jets over the gas’s'),
  reach: quantity('1', 'Share of the way to the middle that they reach; 1 and more: they meet'),
  bestCount: quantity('1', 'Number of holes that would mix best at this draught'),
  outsideTests: z.array(z.string()).describe('What lies outside what the forms were tested with.'),
})

/** One moment of the steady burn. */
export const moment = z
  .strictObject({
    frontPosition: quantity('1', '0 at the top of the fuel, 1 at its floor'),
    regime,
    firepower: quantity('W', 'Heat set free, lower heating value'),
    fuelRate: quantity('kg/s', 'Fuel that burns away, as fired'),
    superficialVelocity: quantity(
      'm/s',
      'Primary air over the bed’s cross-section, at the density of the outside air',
    ),
    primaryFlux: quantity('kg/(m² s)', 'Primary air per area of the bed'),
    air: z.strictObject({
      primary: quantity('kg/s', 'Air up through the fuel'),
      secondary: quantity('kg/s', 'Air into the space over the fuel'),
      tertiary: quantity('kg/s', 'Air into the flame above that'),
      secondaryToPrimary: quantity('1', 'Secondary over primary, by mass'),
    }),
    flueGas: quantity('kg/s', 'Gas that leaves the stove'),
    airRatio: z.strictObject({
      flame: perhaps('1', 'Air met by the gas over the air it needs, over the fuel; null: no gas there'),
      outlet: perhaps('1', 'The same where the gas leaves the stove'),
    }),
    temperature: z.strictObject({
      front: quantity('K', 'Of the glowing front'),
      flame: quantity('K', 'Of the flame, mixed through'),
      outlet: quantity('K', 'Of the gas that leaves'),
      secondaryAir: quantity('K', 'Of the secondary air as it enters the flame'),
    }),
    flame: z.strictObject({
      height: quantity('m', 'Above the concentrator'),
      strikesPot: z.boolean().nullable().describe('Whether the flame reaches the pot; null without one.'),
      swirl: perhaps('1', 'Swirl number; null without bent vanes'),
      recirculates: z
        .boolean()
        .nullable()
        .describe('Whether gas flows back on the axis; null without vanes.'),
      jets: z.array(jet).describe('Rows that blow into the space over the fuel.'),
    }),
    outerWalls: z
      .array(
        z.strictObject({
          part: word('Whose wall it is.'),
          height: quantity('m', 'Middle of the stretch above the ground'),
          temperature: quantity('K', 'Of the metal'),
        }),
      )
      .describe('Walls that a hand can touch, hottest first.'),
    gas: z
      .strictObject({
        CO: quantity('1', 'Carbon monoxide, volume share'),
        CO2: quantity('1', 'Carbon dioxide, volume share'),
        H2: quantity('1', 'Hydrogen, volume share'),
        CH4: quantity('1', 'Methane, volume share'),
        N2: quantity('1', 'Nitrogen, volume share'),
        lowerHeatingValue: quantity('J/m³', 'Per cubic metre at 0 °C and 101325 Pa, without the tar'),
      })
      .describe('Dry wood gas before it burns: not what leaves the stove, which is not predicted.'),
    passages: z.array(passage).describe('Every way that air or gas takes.'),
    spaces: z
      .array(
        z.strictObject({
          name: word('What it is called.'),
          height: quantity('m', 'Above the ground'),
          pressure: quantity('Pa', 'Over the open air at the same height'),
          temperature: quantity('K', 'Of the gas in it'),
        }),
      )
      .describe('The spaces that the ways join.'),
    balance: z.strictObject({
      mass: quantity('1', 'Worst imbalance of a space over the largest flow'),
      energy: quantity('1', 'Heat in less heat out over the fuel’s heat'),
    }),
    effort: z.strictObject({
      rounds: quantity('1', 'Rounds until it settled'),
      newtonSteps: quantity('1', 'Steps on the pressures, all together'),
    }),
  })
  .describe('One moment of the steady burn.')
