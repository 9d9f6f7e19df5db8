import { long } from '#basis/text/bothUnits.ts'
import type { PlanBundle, PlanInput, PlanViews } from '#craft/plan/input.ts'
import { arranged } from '#craft/solid/arrange.ts'
import type { SolidKernel } from '#craft/solid/kernel.ts'
import { stoveSolids } from '#craft/solid/solids.ts'
import { buildSteps } from '#craft/steps/steps.ts'
import { figureTwice } from '#craft/told/band.ts'
import { EXPLODED_CAMERA, PLAN_CAMERA } from '#craft/view/camera.ts'
import { viewSvg } from '#craft/view/svg.ts'
import { viewOf } from '#craft/view/view.ts'
import { reportOf } from '#science/answers/burn/report.ts'
import { plainSetup } from '#science/answers/burn/setup.ts'
import type { Progress } from '#science/answers/sampled.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { canWindows } from '#stove/check/canWindow.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { smallestBundle } from '#stove/fit/packing.ts'
import type { Shelf, Stove } from '#stove/model.ts'
import { shopListOf } from './artefact/shop.ts'
import { figureOf } from './burnFigure.ts'

/** What a plan wants besides the stove. */
export interface PlanWish
  extends Pick<PlanInput, 'file' | 'date' | 'version' | 'author' | 'licence' | 'fonts' | 'script'> {
  readonly shelf: Shelf | null
  /** Sets of coefficients that the bands are drawn from. */
  readonly bandSets: number
  readonly kernel: SolidKernel
}

/** Facets of the pictures: finer than a printed line is wide [mm]. */
const PICTURE_FACETS = { chord: 0.05 }

/** The stove in space: solids, and pictures of them. */
export const viewsOf = (stove: Stove, kernel: SolidKernel): PlanViews => {
  const solids = stoveSolids(kernel, stove, PICTURE_FACETS)
  const of = (arrangement: 'whole' | 'cut' | 'exploded' | 'packed') =>
    arranged(kernel, stove, solids, arrangement, { facets: PICTURE_FACETS })
  const [whole, cut, exploded, packed] = [of('whole'), of('cut'), of('exploded'), of('packed')]
  return {
    whole: viewSvg(
      viewOf(whole, { camera: PLAN_CAMERA, fit: { width: 66, height: 66 } }),
      `${stove.name} from outside`,
    ).trim(),
    cut: viewSvg(
      viewOf(cut, { camera: PLAN_CAMERA, fit: { width: 82, height: 116 }, cutAway: 0 }),
      `${stove.name} cut open`,
    ).trim(),
    exploded: viewSvg(
      viewOf(exploded, { camera: EXPLODED_CAMERA, fit: { width: 82, height: 116 } }),
      `${stove.name} taken apart`,
    ).trim(),
    turntable: [
      { label: 'whole', surfaces: whole },
      { label: 'cut open', surfaces: cut, seenFrom: PLAN_CAMERA.bearing },
      { label: 'taken apart', surfaces: exploded },
      { label: 'packed', surfaces: packed },
    ],
  }
}

const burnOf = (stove: Stove, bandSets: number, progress: Progress): PlanInput['burn'] => {
  const steady = predictSteady(stove)
  const outcome = reportOf(plainSetup(stove), bandSets, progress)
  if (outcome.kind === 'no burn') return { noBurn: outcome.noBurn.sentence }
  if (!steady.ok || steady.value.kind === 'no burn')
    return {
      noBurn:
        steady.ok && steady.value.kind === 'no burn'
          ? steady.value.noBurn.sentence
          : 'Its fuel is not known.',
    }
  const { report } = outcome
  const { prediction } = steady.value
  // One burn, one length and one power in all of a plan: those of the march from lighting on, not of the steady front.
  const woodGas = {
    firepower: report.figures.firepower,
    firepowerHighest: report.figures.firepowerHigh,
    firepowerLowest: report.figures.firepowerLow,
    duration: report.figures.woodGasTime,
  }
  return { summary: { ...prediction, woodGas }, report, figure: figureOf(report) }
}

/** A stove of more parts than can be tried in every order has no bundle. */
const MOST_PARTS = 12

const bundleOf = ({ parts }: Stove): PlanBundle | null => {
  if (parts.size > MOST_PARTS) return null
  const { mass, diameter, height } = smallestBundle(parts)
  return { weight: figureTwice(mass, 'mass', 'oz'), packed: `${long(diameter)} across, ${long(height)} high` }
}

/** Works out everything a plan shows: the burn with its bands, lists, steps, solids and their pictures. */
export const gatherPlan = (stove: Stove, wish: PlanWish, progress: Progress): PlanInput => {
  const { shelf, bandSets, kernel, ...given } = wish
  return {
    ...given,
    stove,
    findings: checkStove(stove, shelf),
    burn: burnOf(stove, bandSets, progress),
    windows: canWindows(stove),
    shop: shopListOf(stove, shelf),
    steps: buildSteps(stove),
    bundle: bundleOf(stove),
    views: viewsOf(stove, kernel),
  }
}
