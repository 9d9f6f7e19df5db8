const open = new Set<Promise<unknown>>()

/** What is being written to this browser's drive, until it is there. */
export const underWay = <T>(writing: Promise<T>): Promise<T> => {
  open.add(writing)
  const over = (): void => void open.delete(writing)
  writing.then(over, over)
  return writing
}

/** Resolves when nothing is being written any more: a page that is loaded anew breaks off what is. */
export const allWritten = async (): Promise<void> => {
  while (open.size > 0) await Promise.allSettled(open)
}
