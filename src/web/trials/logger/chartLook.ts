/** How one curve differs from the next when no colour is seen: by its dashes. */
const DASHES: readonly (readonly number[])[] = [
  [],
  [9, 4],
  [2, 3],
  [10, 3, 2, 3],
  [5, 2],
  [14, 5],
  [1, 5],
  [7, 3, 1, 3],
]

const BORDERS = ['solid', 'dashed', 'dotted'] as const
const INKS = ['--ember', '--air', '--ink', '--muted'] as const

export interface ChartLook {
  readonly ink: string
  readonly muted: string
  readonly hairline: string
  readonly paper: string
  readonly ember: string
  readonly font: string
  /** The border of a curve's sign in the legend, as near to its dashes as borders go. */
  readonly border: (index: number) => 'solid' | 'dashed' | 'dotted'
  readonly curve: (index: number) => { readonly stroke: string; readonly dash: number[] }
}

/** The colours of the page as they are now. */
export const chartLook = (): ChartLook => {
  const style = getComputedStyle(document.documentElement)
  const colour = (name: string): string => style.getPropertyValue(name).trim()
  const inks = INKS.map(colour)
  return {
    ink: colour('--ink'),
    muted: colour('--muted'),
    hairline: colour('--hairline'),
    paper: colour('--paper'),
    ember: colour('--ember'),
    font: getComputedStyle(document.body).fontFamily,
    border: (index) => BORDERS[index % BORDERS.length] ?? 'solid',
    curve: (index) => ({
      stroke: inks[index % inks.length] ?? '',
      dash: [...(DASHES[index % DASHES.length] ?? [])],
    }),
  }
}

/** Those of the light page, whatever is on the screen: paper is white. */
export const paperLook = (): ChartLook => {
  const { dataset } = document.documentElement
  const { theme } = dataset
  dataset.theme = 'light'
  const look = chartLook()
  if (theme === undefined) delete dataset.theme
  else dataset.theme = theme
  return look
}
