/** `a.b[2].c`, as a maker would point at it. */
export const fieldPath = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`
    return text === '' ? String(step) : `${text}.${String(step)}`
  }, '')
