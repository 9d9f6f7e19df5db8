/**
 * Branded SI numbers. A brand costs nothing at run time; it keeps millimetres out of a field that
 * wants metres. Arithmetic gives a plain `number`: put the brand back where the result enters a
 * model (`(a - b) as Metres`), which is the place a reader wants to see it.
 */
declare const unit: unique symbol

type Branded<U extends string> = number & { readonly [unit]: U }

export type Metres = Branded<'m'>
export type Millimetres = Branded<'mm'>
export type SquareMetres = Branded<'m2'>
export type CubicMetres = Branded<'m3'>
export type Kilograms = Branded<'kg'>
export type Kelvin = Branded<'K'>
export type Radians = Branded<'rad'>
/** A bearing on a can: clockwise seen from above, 0 at the part's front mark [deg]. */
export type Degrees = Branded<'deg'>
/** A share of one: 0 to 1 [1]. */
export type Fraction = Branded<'1'>

/** Exactly 25.4: international inch, ISO 80000-3 [mm]. */
export const MILLIMETRES_PER_INCH = 25.4

/** A number that is metres already, marked so [m]. */
export const metres = (value: number): Metres => value as Metres
/** Millimetres to metres [m]. */
export const fromMillimetres = (value: number): Metres => (value / 1000) as Metres
/** Metres to millimetres [mm]. */
export const toMillimetres = (value: Metres): Millimetres => (value * 1000) as Millimetres
/** 127/5000 is 25.4/1000 in whole numbers: 3/8 in comes out as 0.009525 m, the nearest number there is. */
export const fromInches = (value: number): Metres => ((value * 127) / 5000) as Metres
/** A number that is degrees already, marked so [deg]. */
export const degrees = (value: number): Degrees => value as Degrees
/** Degrees to radians [rad]. */
export const toRadians = (value: Degrees): Radians => ((value * Math.PI) / 180) as Radians
/** Kelvin to degrees Celsius, for words and labels [°C]. */
export const toCelsius = (value: Kelvin): number => value - 273.15
/** A number that is a share of one already, marked so; it is not checked [1]. */
export const fraction = (value: number): Fraction => value as Fraction
