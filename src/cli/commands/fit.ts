import { BadInput } from '#basis/problem.ts'
import { long } from '#basis/text/bothUnits.ts'
import { labelled, page, wrap } from '#compose/page/text.ts'
import { twice } from '#compose/page/units.ts'
import { isWhole } from '#stove/can/ends.ts'
import { findFoodCan } from '#stove/can/foodCans.ts'
import { readSizeCode } from '#stove/can/sizeCode.ts'
import type { Bundle } from '#stove/fit/bundle.ts'
import { type Fit, fitCans } from '#stove/fit/fit.ts'
import { smallestBundle } from '#stove/fit/packing.ts'
import type { Can, Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, shelfFrom, stoveFrom } from '../input.ts'
import { canNamed } from './cans.ts'

export interface FitCommandOptions {
  readonly shelf?: string
  readonly json?: boolean
}

const bundlePage = (env: Environment, stove: Stove, bundle: Bundle): string =>
  page(
    wrap(
      `${stove.name}, packed: ${long(bundle.diameter)} across, ${long(bundle.height)} high, ` +
        `${twice(bundle.volume, 'packedVolume', 'US qt')}, ${twice(bundle.mass, 'mass', 'oz')}`,
      env.width,
    ),
    [
      'Pack it so',
      ...bundle.sentences.map((line, i) => wrap(`${i + 1}. ${line}`, env.width, '  ', '     ')),
    ].join('\n'),
    bundle.rattles.length === 0
      ? 'Nothing rattles.'
      : [
          'What would rattle',
          ...bundle.rattles.map(({ sentence, fix }) => wrap(`${sentence} ${fix}`, env.width, '  ', '    ')),
        ].join('\n'),
    wrap('Weight is worked out from the thickness of the tin, without screws, paint or pot.', env.width),
  )

interface Pair {
  readonly inner: string
  readonly outer: string
  /** The outer can is closed as bought: the fit is meant with its top cut out. */
  readonly cutOpen: boolean
  readonly fit: Fit
}

/** A can that is closed at both ends takes nothing in until its top is cut out. */
const cutOpen = (can: Can): Can =>
  isWhole(can.top) && isWhole(can.bottom) ? { ...can, top: { kind: 'open' } } : can

const pairOf = (inner: string, innerCan: Can, outer: string, outerCan: Can): Pair => {
  const opened = cutOpen(outerCan)
  return {
    inner,
    outer,
    cutOpen: opened !== outerCan,
    fit: fitCans(innerCan, opened, { innerName: inner, outerName: outer }),
  }
}

/** A rim narrower by up to this on the diameter still carries a can by itself [m]; a judgement. */
const WIDEST_REST = 0.012

/** Pairs worth knowing: what goes in, and what rests on a rim not much narrower than itself. */
const worthKnowing = ({ fit }: Pair): boolean =>
  fit.kind === 'drops in' ||
  fit.kind === 'slides in' ||
  fit.kind === 'snaps on the lip' ||
  (fit.kind === 'sits on the rim' && fit.clearance !== null && -fit.clearance.nominal <= WIDEST_REST)

const pairSentence = ({ cutOpen: cut, outer, fit }: Pair): string =>
  cut ? `With the top of ${outer} cut out: ${fit.sentence}` : fit.sentence

/** What a can is known by on the shelf. */
const canLine = (name: string, { seamDiameter, height }: Can): string =>
  `${name}: ${long(seamDiameter.value)} over the seam, ${long(height.value)} high`

const ofShelf = (env: Environment, path: string, json: boolean): ExitCode => {
  const { cans } = shelfFrom(env, path)
  const found = [...cans].flatMap(([inner, innerCan]) =>
    [...cans]
      .filter(([outer]) => outer !== inner)
      .map(([outer, outerCan]) => pairOf(inner, innerCan, outer, outerCan))
      .filter(worthKnowing),
  )
  if (json) {
    env.out(`${JSON.stringify({ fits: found }, null, 2)}\n`)
    return EXIT.fine
  }
  env.out(
    page(
      wrap(
        `${cans.size} ${cans.size === 1 ? 'can' : 'cans'} on the shelf, ${found.length} ${found.length === 1 ? 'way' : 'ways'} that one goes with another`,
        env.width,
      ),
      ...[...cans].map(([name, can]) => {
        const these = found.filter(({ inner }) => inner === name).map(pairSentence)
        const said = these.length === 0 ? ['Goes into or onto no other can of the shelf.'] : these
        return [
          wrap(canLine(name, can), env.width),
          ...said.map((sentence) => wrap(sentence, env.width, '  ', '    ')),
        ].join('\n')
      }),
    ),
  )
  return EXIT.fine
}

const ofStove = (env: Environment, path: string, json: boolean): ExitCode => {
  const stove = stoveFrom(env, path)
  const bundle = smallestBundle(stove.parts, stove.assembly)
  env.out(
    json ? `${JSON.stringify({ stove: stove.name, bundle }, null, 2)}\n` : bundlePage(env, stove, bundle),
  )
  return EXIT.fine
}

const ofTwo = (env: Environment, one: string, other: string, json: boolean): ExitCode => {
  const pair = pairOf(one, canNamed(one).can, other, canNamed(other).can)
  env.out(
    json
      ? `${JSON.stringify(pair, null, 2)}\n`
      : page(
          wrap(pairSentence(pair), env.width),
          labelled(
            [[one, canNamed(one).can] as const, [other, canNamed(other).can] as const].map(([name, can]) => [
              name,
              `${long(can.seamDiameter.value)} over the seam, ${long(can.bodyDiameter.value)} body, ${long(can.height.value)} high`,
            ]),
            env.width,
          ),
        ),
  )
  return EXIT.fine
}

/** A single word is a stove file unless it names a can. */
const isCan = (text: string): boolean => findFoodCan(text) !== null || readSizeCode(text, 'can').ok

export const fitting = (env: Environment, what: readonly string[], options: FitCommandOptions): ExitCode => {
  const json = options.json === true
  const [one, other] = what
  if (options.shelf !== undefined && what.length === 0) return ofShelf(env, options.shelf, json)
  if (one !== undefined && other !== undefined && what.length === 2 && options.shelf === undefined)
    return ofTwo(env, one, other, json)
  if (one !== undefined && what.length === 1 && options.shelf === undefined && !isCan(one))
    return ofStove(env, one, json)
  throw new BadInput([
    problemOf(
      'fit.what',
      'fit',
      [...what, ...(options.shelf === undefined ? [] : [`--shelf ${options.shelf}`])].join(' '),
      'two cans, one stove file, or --shelf FILE alone',
      'For example: tinwright fit 307x409 404x700.',
    ),
  ])
}
