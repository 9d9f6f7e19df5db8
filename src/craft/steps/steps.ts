import type { Stove } from '#stove/model.ts'
import { assemblingSteps } from './assembling.ts'
import { makingSteps } from './making.ts'
import { preparingSteps } from './prepare.ts'
import type { BuildStep } from './step.ts'

/**
 * How to build a stove, step by step, each with its own picture drawn from the stove. Every opening is finished in one
 * step, every part put in its place in one, hosts before guests. Throws `BadInput` for a stove whose assembly names
 * parts that are not there, and for a band that goes round no can.
 */
export const buildSteps = (stove: Stove): readonly BuildStep[] => [
  ...preparingSteps(stove),
  ...makingSteps(stove),
  ...assemblingSteps(stove),
]
