/** Gives a file to the browser to be saved. */
export const handOver = (name: string, text: string, type: string): void => {
  const address = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

/** A name that every system takes for a file. */
export const fileName = (name: string, ending: string): string => {
  const plain = name
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase()
  return `${plain === '' ? 'trial' : plain}${ending}`
}
