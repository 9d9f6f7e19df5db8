import reference from '#reference/heatingValues.json' with { type: 'json' }
import {
  higherHeatingValue,
  lowerHeatingValue,
  stoichiometricAir,
  type UltimateAnalysis,
} from '#science/fuel/composition.ts'
import type { CheckSet } from '../row.ts'

/** What the correlation's authors state as its mean error; one fuel in a hundred is out by three times that. */
const MEAN_ERROR = 0.0145

const softwood: UltimateAnalysis = { C: 0.505, H: 0.061, O: 0.428, N: 0.001, S: 0, ash: 0.005 }

const heatingValue: CheckSet = {
  title: 'higher heating value from the analysis',
  source: `${reference.source} [bib:raveendran1995]; ours by Channiwala & Parikh 2002 [bib:channiwala2002]`,
  standing: 'measurement',
  note: '4.4 %, three times the mean error that the correlation’s authors state.',
  rows: () =>
    (reference.rows as [string, number, number, number, number, number, number][]).map(
      ([fuel, C, H, N, O, ash, measured]) => ({
        check: `heating value of ${fuel}`,
        published: measured,
        ours:
          higherHeatingValue({
            C: C / 100,
            H: H / 100,
            N: N / 100,
            O: O / 100,
            S: 0,
            ash: ash / 100,
          }) / 1e6,
        unit: 'MJ/kg',
        allowed: { share: 3 * MEAN_ERROR },
      }),
    ),
}

const air: CheckSet = {
  title: 'air that burns it, and heat that stays in the char',
  source: 'worked out by hand from the elements when the check values were collected',
  standing: 'proof of code',
  note: 'Air to a per cent. A fifth of the fuel left as char of 29.5 MJ/kg holds a third of the heat: within a tenth, for the char’s own heat is from memory.',
  rows: () => {
    const lower = lowerHeatingValue(higherHeatingValue(softwood), softwood.H)
    return [
      {
        check: 'air for a kilogram of dry softwood',
        published: 6.05,
        ours: stoichiometricAir(softwood),
        unit: 'kg/kg',
        allowed: { share: 0.01 },
      },
      {
        check: 'oxygen for a kilogram of carbon',
        published: 31.998 / 12.011,
        // Dry air holds 0.2314 kg of it (ISO 2533).
        ours: stoichiometricAir({ C: 1, H: 0, O: 0, N: 0, S: 0, ash: 0 }) * 0.2314,
        unit: 'kg/kg',
        allowed: { share: 1e-3 },
      },
      {
        check: 'share of the heat in a fifth of char',
        published: 1 / 3,
        ours: (0.2 * 29.5e6) / lower,
        unit: '',
        allowed: { share: 0.1 },
      },
    ]
  },
}

export const heatingValueSets: readonly CheckSet[] = [heatingValue, air]
