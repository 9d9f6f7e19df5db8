import { fromMillimetres } from '#basis/units.ts'
import packed from '#reference/packedVoid.json' with { type: 'json' }
import { equalVolumeDiameter, sphericity } from '#science/fuel/pieces.ts'
import { meanVoid } from '#science/fuel/wallEffect.ts'
import type { FuelPieces } from '#stove/model.ts'
import type { CheckSet, PointRow } from '../row.ts'

const rod = (scale: number): FuelPieces => ({
  shape: 'rod',
  diameter: fromMillimetres(scale),
  length: fromMillimetres(scale),
})

const stick = (slenderness: number, scale: number): FuelPieces => ({
  shape: 'block',
  length: fromMillimetres(slenderness * scale),
  width: fromMillimetres(scale),
  thickness: fromMillimetres(scale),
})

/** The same shape, made so large that its ball of equal volume has this diameter [m]. */
const sized = (make: (scale: number) => FuelPieces, diameter: number): FuelPieces =>
  make(diameter / equalVolumeDiameter(make(1)))

/** How slender a square stick of this sphericity is, by bisection. */
const slendernessOf = (wanted: number): number => {
  let [low, high] = [1, 4]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (sphericity(stick(middle, 1)) > wanted) low = middle
    else high = middle
  }
  return low
}

export const packingSets: readonly CheckSet[] = [
  {
    title: 'air between pieces packed in a tube, the looser layer at the wall counted in',
    source: `${packed.source} [bib:benyahia2005]`,
    standing: 'proof of code',
    note: '1e-9: the program prints all its digits.',
    rows: (): readonly PointRow[] => [
      ...packed.rods.map(({ d_m, D_m, void: share }) => ({
        check: `void of rods of ${d_m * 1000} mm in ${D_m * 1000} mm`,
        published: share,
        ours: meanVoid(sized(rod, d_m), D_m),
        unit: '',
        allowed: { share: 1e-9 },
      })),
      ...packed.anyShape.map(({ d_m, D_m, sphericity: phi, void: share }) => {
        const slender = slendernessOf(phi)
        return {
          check: `void of pieces of sphericity ${phi}, ${d_m * 1000} mm in ${D_m * 1000} mm`,
          published: share,
          ours: meanVoid(
            sized((scale) => stick(slender, scale), d_m),
            D_m,
          ),
          unit: '',
          allowed: { share: 1e-9 },
        }
      }),
    ],
  },
]
