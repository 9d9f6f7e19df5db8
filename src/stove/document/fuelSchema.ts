import * as z from 'zod'
import { addProblem, amount, count, length, readText, share, strict, words } from './fields.ts'
import { readFuelKind } from './fuelKind.ts'

const WEIGHT = 'Text such as "312 g" or "11 oz"'

const weighed = strict({ count: count('pieceCount'), weight: amount('fuelWeight', WEIGHT) })
  .optional()
  .meta({ description: 'Some pieces on the scale together, to know how heavy the wood itself is.' })

const rod = strict({ diameter: length('pieceSize'), length: length('pieceSize'), weighed }).meta({
  description: 'Round pieces: sticks, pellets.',
})

const block = strict({
  length: length('pieceSize'),
  width: length('pieceSize'),
  thickness: length('pieceSize'),
  weighed,
}).meta({ description: 'Flat or square pieces: chips, split sticks, shells.' })

const filling = strict({
  weight: amount('fuelWeight', WEIGHT),
  volume: amount('filledVolume', 'Text such as "0.58 L" or "1 US pt"').optional(),
}).meta({
  description:
    'Weight of the fuel that fills the fuel can of this stove up to the fuel level, or a vessel of the given volume; packed as it will be burnt.',
})

const dried = strict({ before: amount('fuelWeight', WEIGHT), after: amount('fuelWeight', WEIGHT) })
  .check(({ value, issues }) => {
    if (value.after <= value.before) return
    addProblem(issues, value, ['after'], {
      code: 'fuel.heavier-dry',
      value: `${Number(((value.after - value.before) * 1000).toFixed(1))} g more than before`,
      allowed: 'at most the weight before drying',
      fix: 'Swap the two weights, or weigh again: drying only takes water away.',
    })
  })
  .meta({
    description:
      'A sample of the fuel weighed as it is and again when an oven of 105 °C takes no more weight off it; gives the moisture.',
  })

const ownFuel = strict({
  name: words(60, 'What you call your fuel.'),
  like: readText(
    readFuelKind,
    'Key of the fuel in the table that it is most like: what is not measured is taken from there.',
  ),
  filling: filling.optional(),
  dried: dried.optional(),
  pieces: z
    .union([rod, block], {
      error: () => '"diameter" and "length", or "length", "width" and "thickness"',
    })
    .optional()
    .meta({ description: 'Size of a middling piece.' }),
})
  .check(({ value, issues }) => {
    if (value.name.trim() === '')
      addProblem(issues, value, ['name'], {
        code: 'fuel.no-name',
        value: 'an empty name',
        allowed: 'a name of up to 60 characters',
        fix: 'Say what it is, such as "hazel twigs".',
      })
    if (value.filling !== undefined || value.dried !== undefined || value.pieces !== undefined) return
    addProblem(issues, value, ['filling'], {
      code: 'fuel.nothing-measured',
      value: '',
      allowed: 'at least one of "filling", "dried", "pieces"',
      fix: `Add what you measured, or write "kind": "${value.like}" instead of "own".`,
    })
  })
  .meta({
    id: 'own-fuel',
    description: 'A fuel of your own, by what can be weighed and measured.',
    anyOf: [{ required: ['filling'] }, { required: ['dried'] }, { required: ['pieces'] }],
  })

export const fuelSchema = strict({
  kind: readText(
    readFuelKind,
    'Key of the fuel table, such as "pellets-6mm", "wood-chips" or "twigs".',
  ).optional(),
  own: ownFuel.optional(),
  level: length('fuelLevel'),
  moisture: share('fuelMoisture').optional(),
  fines: share('fuelFines').optional(),
  packing: z.enum(['tipped', 'upright']).optional().meta({
    description:
      'How it lies: tipped in, or sticks stood upright, so that air rises along the grain. Tipped if left out.',
  }),
})
  .check(({ value, issues }) => {
    if (value.kind === undefined && value.own === undefined)
      addProblem(issues, value, ['kind'], {
        code: 'key.missing',
        value: '',
        allowed: 'a key of the fuel table, such as "twigs"',
        fix: 'Add "kind" here, or describe a fuel of your own in "own".',
      })
    if (value.kind !== undefined && value.own !== undefined)
      addProblem(issues, value, ['kind'], {
        code: 'fuel.kind-and-own',
        value: `"${value.kind}" beside "own"`,
        allowed: 'either "kind" or "own"',
        fix: 'Leave "kind" out: "like" says which fuel of the table your own comes nearest to.',
      })
    if (value.moisture !== undefined && value.own?.dried !== undefined)
      addProblem(issues, value, ['moisture'], {
        code: 'fuel.moisture-twice',
        value: 'moisture beside "dried"',
        allowed: 'one of the two',
        fix: 'Leave "moisture" out: it follows from the two weights.',
      })
  })
  .meta({
    description: 'What is burnt and how high it is filled.',
    oneOf: [{ required: ['kind'] }, { required: ['own'] }],
  })

export type FuelRead = z.output<typeof fuelSchema>
export type OwnFuelRead = NonNullable<FuelRead['own']>
