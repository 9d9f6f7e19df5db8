/** x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

const STEP = /(matrix|translate|scale|rotate)\s*\(([^)]*)\)/g

const stepOf = (name: string, n: readonly number[]): readonly Matrix[] => {
  const [a = 0, b, c] = n
  switch (name) {
    case 'translate':
      return [[1, 0, 0, 1, a, b ?? 0]]
    case 'scale':
      return [[a, 0, 0, b ?? a, 0, 0]]
    case 'rotate': {
      const turn = (a * Math.PI) / 180
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
      const about: Matrix = [cos, sin, -sin, cos, 0, 0]
      return b === undefined || c === undefined ? [about] : [[1, 0, 0, 1, b, c], about, [1, 0, 0, 1, -b, -c]]
    }
    default:
      return [n as unknown as Matrix]
  }
}

/** The steps of a `transform` attribute, outermost first. Throws `SyntaxError` for one that is not known. */
export const readTransform = (text: string): readonly Matrix[] => {
  const steps: Matrix[] = []
  const rest = text.replace(STEP, (_, name: string, list: string) => {
    const numbers = list
      .trim()
      .split(/[\s,]+/)
      .map(Number)
    if (numbers.some(Number.isNaN)) throw new SyntaxError(`“${text}” is no transform`)
    steps.push(...stepOf(name, numbers))
    return ''
  })
  if (rest.trim() !== '') throw new SyntaxError(`“${text}” is no transform of ours`)
  return steps
}
