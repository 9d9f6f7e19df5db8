import * as z from 'zod'
import type { BurnBandKey } from '#science/answers/burn/bands.ts'
import { VOLUMES } from '#science/answers/figures.ts'
import { bandFields, course, overTime } from './bands.ts'
import { moment } from './moment.ts'
import { cautions, findings, fuel, noBurn, perhaps, quantity, regime, site, word, yes } from './plain.ts'

type Meaning = readonly [unit: string, what: string]

type PerVolume<P extends string> = Record<`${P} ${(typeof VOLUMES)[number]} L`, Meaning>

const perVolume = <P extends string>(name: P, unit: string, what: string): PerVolume<P> =>
  Object.fromEntries(
    VOLUMES.map((litres): [string, Meaning] => [
      `${name} ${litres} L`,
      [unit, `${what}, ${litres} L of water`],
    ]),
  ) as PerVolume<P>

const bands: Readonly<Record<BurnBandKey, Meaning>> = {
  firepower: ['W', 'Mean firepower while the whole top is alight'],
  firepowerHigh: ['W', 'Highest firepower while the whole top is alight'],
  firepowerLow: ['W', 'Lowest firepower while the whole top is alight'],
  wholeBedAlightAt: ['s', 'When the whole top of the fuel is alight, after lighting'],
  'boilsAt 1 L': ['s', 'When 1 L boils, after lighting'],
  frontAtFloorAt: ['s', 'When the front reaches the floor, after lighting'],
  charTime: ['s', 'How long the char glows on'],
  overAt: ['s', 'When all is over, after lighting'],
  charLeft: ['kg', 'Char the front leaves, ash included'],
  charShare: ['1', 'Share of the fuel’s heat in that char'],
  hottestOuterWall: ['K', 'Hottest outer wall of the whole burn'],
  heatOfWalls: ['J', 'Heat off walls and flame over the whole burn'],
  heatOfGas: ['J', 'Heat up with the gas over the whole burn'],
  ...perVolume('timeToBoil', 's', 'From going on to the boil'),
  ...perVolume('fuelPerLitre', 'kg', 'Fuel as fired burnt until the boil, for each litre'),
  ...perVolume(
    'efficiency',
    '1',
    'Heat into water and steam over heat of the fuel burnt in the wood-gas phase',
  ),
  ...perVolume('efficiencyCharCredited', '1', 'The same, the char that is left counted as not used'),
  flameHeight: ['m', 'Flame above the concentrator, half way down'],
  flameTemperature: ['K', 'Flame temperature, half way down'],
  airRatioFlame: ['1', 'Air ratio in the flame, half way down'],
  turndown: ['1', 'Highest over lowest steady firepower as the damper turns'],
  windStood: ['m/s', 'Highest wind that the front stands from every side'],
  tripFuel: ['kg', 'Fuel for the trip'],
}

const boil = z.strictObject({
  litres: quantity('L', 'Water in the pot, as kilograms'),
  time: perhaps('s', 'From going on to the boil; null if it does not boil'),
  boilsAt: perhaps('s', 'The same after lighting'),
  fuelPerLitre: perhaps('kg/L', 'Fuel as fired burnt until the boil, for each litre'),
  efficiency: quantity('1', 'Heat into water and steam over heat of the fuel burnt in the wood-gas phase'),
  efficiencyCharCredited: quantity('1', 'The same, the char that is left counted as not used'),
  driesEarly: yes(
    'It boils dry while there is wood gas, so that the efficiencies say how little water there was.',
  ),
  warmest: quantity('K', 'Hottest the water gets'),
  waterLeft: quantity('kg', 'In the pot when all is over'),
  dryAt: perhaps('s', 'When it is as good as dry, after lighting; null if water is left'),
  gained: z
    .strictObject({
      bottom: quantity('J', 'From gas to the bottom'),
      radiation: quantity('J', 'By radiation to the bottom'),
      side: quantity('J', 'Through the side'),
    })
    .describe('Ways that heat took into the pot.'),
})

const step = z.strictObject({
  time: quantity('s', 'After lighting; what follows holds from then'),
  duration: quantity('s', 'For so long'),
  phase: z.enum(['lighting', 'wood gas', 'char']),
  frontPosition: quantity('1', '0 at the top of the fuel, 1 at its floor'),
  alight: quantity('1', 'Share of the bed’s area alight'),
  regime: regime.nullable().describe('Null while it is lit and while char glows.'),
  firepower: quantity('W', 'Heat set free, lower heating value'),
  fuelRate: quantity('kg/s', 'Fuel as fired or char that burns away'),
  primaryAir: quantity('kg/s', 'Air up through the fuel'),
  secondaryAir: quantity('kg/s', 'Air into the space over the fuel'),
  tertiaryAir: quantity('kg/s', 'Air into the flame above that'),
  airRatio: z.strictObject({
    flame: perhaps('1', 'Air met by the gas over the air it needs, over the fuel; null: no gas there'),
    outlet: perhaps('1', 'The same where the gas leaves'),
  }),
  flameTemperature: quantity('K', 'Of the flame, mixed through'),
  outletTemperature: quantity('K', 'Of the gas that leaves'),
  hottestOuterWall: quantity('K', 'Of the outer walls'),
  hearth: z
    .strictObject({
      flueGas: quantity('kg/s', 'Gas that leaves the stove'),
      flameRadiation: quantity('W', 'Heat that flames radiate past the walls'),
      charGlow: quantity('W', 'Heat that bare char glows upwards'),
      charTemperature: quantity('K', 'Of front or char'),
      flameHeight: quantity('m', 'Flame above the concentrator'),
      strikesPot: yes('Whether the flame reaches the pot.'),
    })
    .describe('What a pot gets to see.'),
  rawFuel: quantity('kg', 'Raw fuel in the bed'),
  char: quantity('kg', 'Char in the bed'),
  water: z
    .array(
      z.strictObject({
        litres: quantity('L', 'Which pot'),
        temperature: quantity('K', 'Of its water at the end of the step'),
      }),
    )
    .describe('The pots.'),
})

const asked = z
  .strictObject({
    hot: yes('A second batch in a stove still hot.'),
    newTin: yes('Bright cans that have not been burnt off.'),
    damper: z
      .array(
        z.strictObject({
          at: quantity('s', 'After lighting'),
          turned: quantity('deg', 'Bearing of the band’s front mark'),
        }),
      )
      .describe('Turns of the damper as they came out.'),
    boilNeverCame: yes('A turn at the boil was asked for, and one litre never boils.'),
    pot: z.strictObject({
      diameter: quantity('m', 'Outside'),
      lid: yes('Whether the lid is on.'),
      skirt: z
        .strictObject({
          gap: quantity('m', 'Between pot and skirt'),
          height: quantity('m', 'Of skirt beside the pot'),
          emissivity: quantity('1', 'Of its faces'),
        })
        .nullable()
        .describe('A sheet bent round the pot; null for none.'),
      putOnAt: quantity('s', 'After lighting'),
      waterStart: quantity('K', 'Water and pot when put on'),
    }),
  })
  .describe('What was asked for besides fuel and weather.')

const report = {
  fuel,
  fuelCautions: z
    .array(z.string())
    .describe('Where numbers of the fuel are used outside what they were measured for.'),
  site,
  asked,
  course: course.describe('How it burns most of the time it has wood gas.'),
  stops: z
    .strictObject({
      frontPosition: quantity('1', 'Where it goes out: 0 at the top of the fuel, 1 at its floor'),
      time: quantity('s', 'When, after lighting'),
      sentence: word('Why.'),
    })
    .nullable()
    .describe('Where a front that does not reach the floor goes out; null for one that does.'),
  events: z
    .array(
      z.strictObject({
        time: quantity('s', 'After lighting'),
        kind: z.enum([
          'lit',
          'changed',
          'whole bed alight',
          'pot on',
          'boil',
          'front at the floor',
          'front out',
          'flame out',
          'char out',
          'end',
        ]),
        sentence: word('In words.'),
      }),
    )
    .describe('In order of time; `boil` is of one litre.'),
  figures: z
    .strictObject({
      firepower: quantity('W', 'Mean while the whole top is alight'),
      firepowerHigh: quantity('W', 'Highest'),
      firepowerLow: quantity('W', 'Lowest'),
      woodGasTime: quantity('s', 'From lighting until the front is at the floor or out'),
      charTime: quantity('s', 'How long char glows on'),
      charLeft: quantity('kg', 'Char the front leaves, ash included'),
      charShare: quantity('1', 'Share of the fuel’s heat in it'),
      hottestOuterWall: quantity('K', 'Of the whole burn'),
      heatOfWalls: quantity('J', 'Heat off walls and flame over the whole burn'),
      heatOfGas: quantity('J', 'Heat up with the gas over the whole burn'),
    })
    .describe('What a maker asks first, with the median coefficients.'),
  touch: z
    .strictObject({
      wall: quantity('K', 'Hottest outer wall'),
      longest: perhaps('s', 'Longest touch before a burn may come; null with the risk at its ends'),
      risk: z.enum(['even the briefest touch may burn', 'burns after a while', 'none within 8 hours']),
    })
    .describe('ISO 13732-1, bare metal: thresholds, never a permission.'),
  boils: z.array(boil).describe('Pots of water, least first.'),
  boilingPoint: quantity('K', 'Of water there'),
  turndown: z
    .strictObject({
      settings: z.array(
        z.strictObject({
          turned: quantity('deg', 'Bearing of the band’s front mark'),
          free: quantity('1', 'Of the intake’s area that it leaves free'),
          firepower: perhaps('W', 'With the front half way down; null where the fire goes out'),
          regime: regime.nullable(),
        }),
      ),
      ratio: perhaps('1', 'Highest over lowest firepower that does not smoulder; null where all do'),
    })
    .nullable()
    .describe('Firepower as the damper turns through one pitch of its windows; null without a damper.'),
  wind: z
    .strictObject({
      stands: quantity('m/s', 'Highest wind at its own height that still lets it do better than smoulder'),
      worstFrom: perhaps('deg', 'Where the wind that put it out first comes from; null when none did'),
      tried: quantity('m/s', 'Highest tried'),
    })
    .nullable()
    .describe('Wind it stands; null where it smoulders in calm air.'),
  trip: z
    .strictObject({
      days: quantity('1', 'Days'),
      boilsADay: quantity('1', 'Boils a day'),
      litresABoil: quantity('L', 'Water a boil'),
      fuel: perhaps('kg', 'Fuel as fired, a tenth to spare; null when it does not boil so much water'),
      fillings: perhaps('1', 'Lightings'),
      volume: perhaps('m³', 'Room that fuel takes, tipped'),
    })
    .nullable()
    .describe('Fuel for a trip; null where none was asked for.'),
  halfway: moment
    .nullable()
    .describe(
      'Steady, with the front half way down and the damper as the stove file has it; null where there is none.',
    ),
  totals: z
    .strictObject({
      dryFuelBurnt: quantity('kg', 'Dry fuel that became gas and char'),
      charBurnt: quantity('kg', 'Char that glowed away'),
      charLeft: quantity('kg', 'Char left when all is over'),
      air: quantity('kg', 'Air that came in'),
      flueGas: quantity('kg', 'Gas that left'),
      wallLoss: quantity('J', 'Heat from the walls to the open air'),
      radiated: quantity('J', 'Heat radiated by flame and char past the walls'),
      wallStored: quantity('J', 'Heat still in the walls'),
      massResidual: quantity('1', 'Mass in less mass out over what came in'),
      energyResidual: quantity('1', 'Heat in less heat out over what came in'),
    })
    .describe('Sums over the whole burn.'),
  bands: z
    .strictObject({ ...bandFields(bands), firepowerOverTime: overTime('W', 'Firepower') })
    .nullable()
    .describe('How far the figures may be out; null where none were asked for.'),
  series: z.array(step).describe('The burn step by step, with the median coefficients.'),
}

const head = { format: z.literal('tinwright/burn@1'), stove: word('Name of the stove.') }
const foot = {
  files: z.array(z.string()).describe('Files that were written.'),
  stopFindings: findings,
  cautions,
}

/** What `tinwright burn --json` prints. */
export const burnSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ ...head, kind: z.literal('burn'), ...report, ...foot }),
    z.strictObject({ ...head, kind: z.literal('no burn'), noBurn, ...foot }),
  ])
  .describe(
    'What `tinwright burn --json` prints: one burn from lighting to the last char. SI units throughout. A prediction, no measurement; no CO or smoke figure is predicted, no tier.',
  )
