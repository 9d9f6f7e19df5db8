import type { ValidRange } from './range.ts'

/** Where Martin's correlation holds; H/D 2–12 and r/D 2.5–7.5 besides. */
export const IMPINGING_JET_RANGE: ValidRange = {
  of: 'turbulent jet on a plate',
  quantity: 'Re',
  from: 2000,
  to: 4e5,
}

/**
 * Mean Nusselt number, on the nozzle's diameter D, of a turbulent round jet on a plate out to radius r [1].
 * Nu = Pr^0.42 G F, G = (D/r)(1 − 1.1 D/r)/[1 + 0.1 (H/D − 6) D/r], F = 2 Re^½ (1 + 0.005 Re^0.55)^½, Martin
 * 1977, as Incropera eqs 7.71–7.75, from memory. `IMPINGING_JET_RANGE`. A can stove's gas is below it (Re
 * 300–1500): see `pot/underBottom.ts`; this is for a fan, and to compare where the two meet.
 */
export const impingingJetNusselt = (
  reynolds: number,
  prandtl: number,
  heightRatio: number,
  radiusRatio: number,
): number => {
  const d = 1 / radiusRatio
  const g = (d * (1 - 1.1 * d)) / (1 + 0.1 * (heightRatio - 6) * d)
  const f = 2 * Math.sqrt(reynolds) * Math.sqrt(1 + 0.005 * reynolds ** 0.55)
  return prandtl ** 0.42 * g * f
}
