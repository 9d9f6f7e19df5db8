import type { Stove } from '#stove/model.ts'
import {
  bore,
  canPart,
  discPart,
  type Openings,
  place,
  pullOff,
  rings,
  round,
  row,
  stove,
  window,
} from './stoves.ts'

/**
 * A two-wall stove nothing is wrong with, worked out by hand:
 * - fuel can inside 99.6 mm, section 7791 mm²; 19 secondary holes of 8 mm are 955 mm², 12.3 % of it;
 * - 19 floor holes of 8 mm and 13 wall holes of 10 mm are 1976 mm² of primary, 2.07 times the secondary;
 * - 12 intake holes of 18 mm are 3054 mm², more than 955 + 1976 mm²;
 * - a bore of 60 mm is 2827 mm², 36 % of the section; 8 outlet windows of 20 by 20 mm are 3200 mm²;
 * - the floor stands 15 mm clear: 2π · 51.2 mm · 15 mm = 4825 mm² against 955 mm² of floor holes;
 * - the fuel line is 111 mm up, the secondary row from 144 to 152 mm;
 * - the concentrator, 149 mm wide in 149.6 mm of shell, closes the gap at the top;
 * - 260 mm high on a foot of 152.4 mm: atan(76.2/260) = 16.3°.
 */
export const soundStove = (
  over: {
    readonly shell?: Openings
    readonly fuel?: Openings
    readonly stand?: Openings
    /** Diameter of the concentrator [mm]. */
    readonly ring?: number
  } = {},
): Stove =>
  stove(
    {
      shell: canPart(
        'shell',
        { body: 150, height: 180 },
        { intake: row('intake', 12, round(18), 30), ...over.shell },
      ),
      fuel: canPart(
        'fuel can',
        { body: 100, height: 150 },
        {
          floor: rings('primary', 8, [
            [0, 1],
            [16, 6],
            [32, 12],
          ]),
          low: row('primary', 13, round(10), 20),
          upper: row('secondary', 19, round(8), 130),
          ...over.fuel,
        },
      ),
      ring: discPart('concentrator', over.ring ?? 149, { bore: bore(60) }),
      stand: canPart(
        'pot stand',
        { body: 150, height: 80, bottom: { kind: 'open' }, top: pullOff(120) },
        { outlet: row('outlet', 8, window(20, 20), 50), ...over.stand },
      ),
    },
    [
      place('shell', 'on ground'),
      place('fuel', 'stands in', 'shell', { raised: 15 }),
      place('ring', 'sits on', 'fuel'),
      place('stand', 'sits on', 'shell'),
    ],
    { fuelLevel: 90, pot: 180 },
  )
