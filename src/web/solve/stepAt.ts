/** What holds from `time` for `duration` [s]. */
interface Step {
  readonly time: number
  readonly duration: number
}

/** Which step holds at a time; before the first the first, after the last the last. */
export const stepAt = (steps: readonly Step[], at: number): number => {
  const next = steps.findIndex(({ time, duration }) => at < time + duration)
  return next < 0 ? steps.length - 1 : next
}

/** The first step with the front half way down or below; of a front that goes out before that, the last with wood gas. */
export const stepHalfway = (
  steps: readonly (Step & { readonly frontPosition: number; readonly phase: string })[],
): number => {
  const half = steps.findIndex(({ frontPosition, phase }) => phase !== 'char' && frontPosition >= 0.5)
  if (half >= 0) return half
  return Math.max(
    0,
    steps.findLastIndex(({ phase }) => phase !== 'char'),
  )
}

/** How far the front is at a time, straight between the steps that say it [1]. */
export const frontAt = (
  steps: readonly (Step & { readonly frontPosition: number; readonly phase: string })[],
  at: number,
): number => {
  const i = stepAt(steps, at)
  const [here, next] = [steps[i], steps[i + 1]]
  if (here === undefined) return 0
  if (here.phase === 'char') return 1
  const to =
    next === undefined || next.phase === 'char'
      ? Math.max(here.frontPosition, next === undefined ? here.frontPosition : 1)
      : next.frontPosition
  const share = Math.min(1, Math.max(0, (at - here.time) / here.duration))
  return here.frontPosition + (to - here.frontPosition) * share
}
