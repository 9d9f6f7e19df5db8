import { orThrow, type Problem } from '#basis/problem.ts'
import { METRIC_HAND_SETS, STEP_DRILLS } from '#stove/bit/series.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { resolveStove } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Bit, Finding, Stove } from '#stove/model.ts'
import type { Floor, Holding, StartChoice, Way } from './choice.ts'
import { layOut, NO_VANES } from './layout.ts'

/** A way that can be built: nothing in it is a stop. */
export interface SoundStart {
  readonly way: Way
  readonly file: StoveFile
  readonly stove: Stove
  readonly findings: readonly Finding[]
}

export interface Starts {
  /** The plainest first. */
  readonly sound: readonly SoundStart[]
  /** Where nothing is sound: why not, of the way that came nearest. */
  readonly why: string | null
}

/** Bits to start from where a shelf has none: the widest hand set, and a large step drill. */
export const USUAL_BITS: readonly Bit[] = [
  ...(METRIC_HAND_SETS.at(-1) ?? []).filter(
    ({ diameter }) => Math.abs(diameter * 1000 - Math.round(diameter * 1000)) < 1e-9,
  ),
  ...(STEP_DRILLS.find(({ name }) => name.includes('4 to 32'))?.steps ?? []).filter(
    ({ diameter }) => diameter > 0.013 && diameter < 0.021,
  ),
]

const HOLDINGS: readonly Holding[] = ['by its rim', 'by a ring', 'on feet']
const FLOORS: readonly Floor[] = ['its own', 'a grate']

/** What is tried of the inside, the middle of every rule first. */
const INSIDES: readonly Omit<Way, 'holding' | 'floor'>[] = [
  { secondary: 0.125, floorHoles: 37, bore: 0.5 },
  { secondary: 0.125, floorHoles: 19, bore: 0.5 },
  { secondary: 0.14, floorHoles: 61, bore: 0.55 },
  { secondary: 0.115, floorHoles: 37, bore: 0.6 },
  { secondary: 0.14, floorHoles: 19, bore: 0.45 },
]

const weight = (findings: readonly Finding[]): number =>
  findings.reduce((sum, { severity }) => sum + { stop: 1000, warn: 10, note: 1 }[severity], 0)

const told = ({ field, value, allowed, fix }: Problem): string =>
  `${field}${value === '' ? '' : `, ${value}`}: wanted is ${allowed}. ${fix}`

/** Every way that two cans make a stove that can be built, the plainest and cleanest first. */
export const soundStarts = (choice: StartChoice): Starts => {
  const asked = choice.bits.length === 0 ? { ...choice, bits: USUAL_BITS } : choice
  const sound: (SoundStart & { readonly order: number })[] = []
  let nearest: { readonly weight: number; readonly why: string } | null = null
  const miss = (heavy: number, why: string): void => {
    if (nearest === null || heavy < nearest.weight) nearest = { weight: heavy, why }
  }
  for (const [h, holding] of HOLDINGS.entries())
    for (const [f, floor] of FLOORS.entries())
      for (const [i, inside] of INSIDES.entries()) {
        const way: Way = { holding, floor, ...inside }
        const laid = layOut(asked, way)
        if (!laid.ok) {
          miss(1e6, laid.problems.map(told).join(' '))
          if (laid.problems.some(({ code }) => code === NO_VANES)) continue
          // Cans that are too tall or too narrow stay so, whatever is drilled in them.
          break
        }
        const stove = orThrow(resolveStove(laid.value))
        const findings = checkStove(stove, null)
        const stop = findings.find(({ severity }) => severity === 'stop')
        if (stop === undefined) {
          const order = weight(findings) + 3 * h + 2 * f + 0.1 * i
          sound.push({ way, file: laid.value, stove, findings, order })
          continue
        }
        miss(weight(findings), `${stop.sentence} ${stop.fix}`)
        if (stop.code.startsWith('fit.')) break
      }
  sound.sort((a, b) => a.order - b.order)
  const found = nearest as { readonly why: string } | null
  return {
    sound: sound.map(({ order: _, ...start }) => start),
    why: sound.length > 0 ? null : (found?.why ?? 'No way was found.'),
  }
}
