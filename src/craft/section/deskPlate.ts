import type { Plate, PlateInput } from './plate.ts'
import { widePlate } from './widePlate.ts'

/** The section with its answers beside it, for a desk. Read on a page 840 wide, small letters are still 9.5 high. */
export const deskPlate = (input: PlateInput): Plate =>
  widePlate(input, { width: 1150, margin: 28, labels: 276, answers: 208, tallest: 740 })
