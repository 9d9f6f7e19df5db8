import type { QuantityKey } from '#basis/quantities.ts'
import { Explain } from './explain.tsx'

/** Which quantity an answer beside the section is one of. */
const QUANTITY_OF: Readonly<Record<string, QuantityKey>> = {
  firepower: 'firepower',
  time: 'burnTime',
  ratio: 'airSplit',
  flame: 'flameHeight',
  wall: 'wallTemperature',
  charge: 'fuelWeight',
}

/** The small button beside an answer, where there is a quantity to explain. */
export const ExplainAnswer = ({ answer }: { readonly answer: string }) => {
  const quantity = QUANTITY_OF[answer]
  return quantity === undefined ? null : <Explain quantity={quantity} />
}
