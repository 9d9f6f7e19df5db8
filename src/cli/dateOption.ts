import { BadInput } from '#basis/problem.ts'

/** Pages that are made for a day: a day that is none is refused by the name of the option it was written in. */
export const withDateOption = async <T>(pages: Promise<T>): Promise<T> => {
  try {
    return await pages
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    throw new BadInput(
      error.problems.map((one) => (one.field === 'date' ? { ...one, field: '--date' } : one)),
    )
  }
}
