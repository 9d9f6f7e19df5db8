import { BadInput, orThrow } from '#basis/problem.ts'
import { readCount, readQuantity } from '#basis/text/read.ts'
import { withPot } from '#compose/conditions.ts'
import type { BurnSetup, DamperTurn, Trip } from '#science/answers/burn/setup.ts'
import { usualWish } from '#science/answers/figures.ts'
import { tinplateEmissivity } from '#science/heat/emissivity.ts'
import type { Skirt } from '#science/pot/skirt.ts'
import type { Stove } from '#stove/model.ts'
import { type ConditionOptions, moistureOf, siteOf, withFuel } from '../conditions.ts'
import { optionQuantity, problemOf } from '../input.ts'

/** What was asked for on the command line, besides fuel and weather. */
export interface BurnOptions extends ConditionOptions {
  readonly damper?: readonly string[]
  readonly hot?: boolean
  /** False for `--no-lid`. */
  readonly lid?: boolean
  readonly skirt?: string
  readonly pot?: string
  readonly newTin?: boolean
  readonly trip?: string
}

const refuse = (...of: Parameters<typeof problemOf>): never => {
  throw new BadInput([problemOf(...of)])
}

/** `10 min: 12 deg`, `boil: 12 deg`. The last colon parts time from bearing. */
const turnOf = (text: string): DamperTurn => {
  const field = '--damper'
  const colon = text.lastIndexOf(':')
  if (colon < 0)
    return refuse(
      'damper.form',
      field,
      text,
      'when, a colon, and where to: "10 min: 12 deg" or "boil: 12 deg"',
      'Write the time after lighting, or boil, before the colon and the bearing of the band’s front mark after it.',
    )
  const when = text.slice(0, colon).trim()
  return {
    at: /^boil$/i.test(when) ? 'boil' : orThrow(readQuantity(when, field, 'timeAfterLighting')),
    turned: orThrow(readQuantity(text.slice(colon + 1).trim(), field, 'bearing')),
  }
}

const turnsOf = (stove: Stove, texts: readonly string[]): readonly DamperTurn[] => {
  if (texts.length > 0 && ![...stove.parts.values()].some(({ role }) => role === 'damper'))
    refuse(
      'damper.none',
      '--damper',
      texts.join(', '),
      'a stove with a damper band',
      `${stove.name} has none: leave the option out, or give the stove a band.`,
    )
  const turns = texts.map(turnOf)
  for (const [i, { at }] of turns.entries())
    if (turns.findIndex((other) => other.at === at) !== i)
      refuse('damper.twice', '--damper', texts.join(', '), 'one bearing at a time', 'Give each time once.')
  return turns
}

/** Bright tin by the side of a pot that boils. */
const SKIRT_EMISSIVITY = tinplateEmissivity(400, false)

const skirtOf = (text: string | undefined): Skirt | null => {
  if (text === undefined) return null
  const field = '--skirt'
  const halves = text.split(/\s*[x×]\s*/i)
  if (halves.length !== 2)
    return refuse(
      'skirt.form',
      field,
      text,
      'gap by height, such as "8 mm x 60 mm"',
      'Write the room between pot and skirt first, then an x, then how high the skirt stands beside the pot.',
    )
  return {
    gap: orThrow(readQuantity(halves[0], field, 'skirtGap')),
    height: orThrow(readQuantity(halves[1], field, 'skirtHeight')),
    emissivity: SKIRT_EMISSIVITY,
  }
}

const TRIP = /^(.+?)\s*days?\s*,\s*(.+?)\s*boils?(?:\s+(?:a|per)\s+day)?\s*,\s*(.+)$/i
const LITRES_IN_CUBIC_METRE = 1000

const tripOf = (text: string | undefined): Trip | null => {
  if (text === undefined) return null
  const field = '--trip'
  const parts = TRIP.exec(text.trim())
  if (parts === null)
    return refuse(
      'trip.form',
      field,
      text,
      'days, boils a day and water a boil, such as "3 days, 2 boils, 0.5 L"',
      'Write the three in this order with commas between them.',
    )
  return {
    days: orThrow(readCount(parts[1], field, 'tripDays')),
    boilsADay: orThrow(readCount(parts[2], field, 'boilsPerDay')),
    litresABoil: orThrow(readQuantity(parts[3], field, 'waterVolume')) * LITRES_IN_CUBIC_METRE,
  }
}

/**
 * Reads what was asked for.
 * @throws BadInput that names the option.
 */
export const setupOf = (file: Stove, options: BurnOptions): BurnSetup => {
  const potDiameter = optionQuantity(options.pot, '--pot', 'potDiameter')
  const stove = withPot(withFuel(file, options), potDiameter)
  const site = siteOf(options)
  return {
    stove,
    site,
    moisture: moistureOf(options),
    burntOff: options.newTin !== true,
    hot: options.hot === true,
    turns: turnsOf(stove, options.damper ?? []),
    wish: {
      ...usualWish,
      lid: options.lid !== false,
      skirt: skirtOf(options.skirt),
      potDiameter: stove.potDiameter ?? potDiameter ?? usualWish.potDiameter,
    },
    trip: tripOf(options.trip),
  }
}
