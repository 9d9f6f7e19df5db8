import type { Plate, PlateInput } from './plate.ts'
import { widePlate } from './widePlate.ts'

/**
 * The section without its answers, for a page that says them in its own lettering: across the column of an A4 or Letter page
 * (499 and 516 pt) small letters are 7 pt and more.
 */
export const pagePlate = (input: PlateInput, tallest = 400): Plate =>
  widePlate(input, { width: 924, margin: 6, labels: 352, answers: 0, tallest })
