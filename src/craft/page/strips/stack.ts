import type { Canvas } from '../paint.ts'
import type { Strip } from './strip.ts'

/** Of strips one under the other, nothing over the first [pt]. */
export const stackHeight = (strips: readonly Strip[]): number =>
  strips.reduce((sum, { height, before }, i) => sum + height + (i === 0 ? 0 : before), 0)

const drawStack = (strips: readonly Strip[], canvas: Canvas, x: number, y: number): void => {
  let at = y
  for (const [i, strip] of strips.entries()) {
    at += i === 0 ? 0 : strip.before
    strip.draw(canvas, x, at)
    at += strip.height
  }
}

interface Stack {
  readonly strips: readonly Strip[]
  readonly x: number
}

/** A stack with its first picture that gives way so much made lower. */
const lowerStack = ({ strips, x }: Stack, by: number): Stack | null => {
  for (const [i, strip] of strips.entries()) {
    const lower = strip.lower?.(by) ?? null
    if (lower !== null) return { strips: strips.with(i, lower), x }
  }
  return null
}

/** Several stacks as one strip that is not cut. */
export const bundled = (stacks: readonly Stack[], before: number): Strip => {
  const height = Math.max(...stacks.map(({ strips }) => stackHeight(strips)))
  return {
    height,
    before,
    keep: false,
    draw: (canvas, x, y) => {
      for (const stack of stacks) drawStack(stack.strips, canvas, x + stack.x, y)
    },
    lower: (by) => {
      const lower = stacks.map((stack) => {
        const over = stackHeight(stack.strips) - (height - by)
        return over <= 0 ? stack : lowerStack(stack, over)
      })
      return lower.some((stack) => stack === null) ? null : bundled(lower as readonly Stack[], before)
    },
  }
}
