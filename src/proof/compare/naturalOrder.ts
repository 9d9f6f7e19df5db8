/** `B2` before `B10`, the same on every machine. */
export const inOrder = (a: string, b: string): number => {
  const parts = (name: string): readonly string[] => name.toLowerCase().match(/\d+|\D+/g) ?? []
  const [x, y] = [parts(a), parts(b)]
  for (let i = 0; i < Math.min(x.length, y.length); i++) {
    const [s, t] = [x[i] as string, y[i] as string]
    const numbers = Number(s) - Number(t)
    const order = Number.isNaN(numbers) ? (s < t ? -1 : s > t ? 1 : 0) : numbers
    if (order !== 0) return order
  }
  return x.length - y.length || (a < b ? -1 : a > b ? 1 : 0)
}
