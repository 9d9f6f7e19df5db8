/** Every colour of the plate, one table a theme. Values are CSS colours; those of `heat` must be #rrggbb to be mixed. */
export interface Theme {
  readonly paper: string
  readonly ink: string
  /** Second lines, captions. */
  readonly muted: string
  /** Ruler, leaders, what is seen beyond the cut. */
  readonly faint: string
  readonly hairline: string
  readonly ember: string
  readonly rawFuel: string
  readonly rawFuelLine: string
  readonly rawGround: string
  readonly char: string
  readonly charLine: string
  readonly charGround: string
  readonly glow: string
  readonly pot: string
  /** Edge of air ribbons, so that they differ from gas without colour. */
  readonly airEdge: string
  readonly arrowOnAir: string
  readonly arrowOnGas: string
  /** Colour of air and gas by temperature [K], rising. Lightness runs one way, so that it is read in grey too. */
  readonly heat: readonly (readonly [temperature: number, colour: string])[]
}

/** Warm paper. Hotter is darker. */
export const lightTheme: Theme = {
  paper: '#f7f1e5',
  ink: '#2a2520',
  muted: '#6b6157',
  faint: '#9a8f81',
  hairline: '#d6cab6',
  ember: '#c8451a',
  rawFuel: '#e6d3ad',
  rawFuelLine: '#b3956180',
  rawGround: '#efe3c9',
  char: '#453e38',
  charLine: '#26211d',
  charGround: '#6d635a',
  glow: '#ffcf7a',
  pot: '#efe7d8',
  airEdge: '#2f6f83',
  arrowOnAir: '#1f5162',
  arrowOnGas: '#fff3df',
  heat: [
    [293, '#a9cdd4'],
    [380, '#b9bf9f'],
    [520, '#d6ab66'],
    [800, '#dd8640'],
    [1150, '#cf551f'],
    [1500, '#a8300f'],
    [1800, '#86200c'],
  ],
}

/** The same at night. Hotter is brighter. */
export const darkTheme: Theme = {
  paper: '#1d1a17',
  ink: '#ece3d4',
  muted: '#b3a899',
  faint: '#7d7468',
  hairline: '#443d35',
  ember: '#e8703a',
  rawFuel: '#6b5a3c',
  rawFuelLine: '#94805a80',
  rawGround: '#4a3f2d',
  char: '#14110f',
  charLine: '#37312b',
  charGround: '#2a2521',
  glow: '#ffdf9c',
  pot: '#2a2621',
  airEdge: '#7fb7c6',
  arrowOnAir: '#d5ebf0',
  arrowOnGas: '#33130a',
  heat: [
    [293, '#2f5f6e'],
    [380, '#55665a'],
    [520, '#84602f'],
    [800, '#b5652b'],
    [1150, '#e5793a'],
    [1500, '#f6a55c'],
    [1800, '#ffd08f'],
  ],
}
