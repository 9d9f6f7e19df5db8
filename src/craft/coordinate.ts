/**
 * Ten thousandths of a millimetre: finer than any printer, coarser than rounding on any machine, so that
 * the same drawing is the same text everywhere. Throws `RangeError` for what is no number.
 */
export const round = (value: number): number => {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing has a coordinate that is no number: ${value}`)
  const rounded = Math.round(value * 1e4) / 1e4
  return rounded === 0 ? 0 : rounded
}
