import { medianCoefficients } from '#science/coefficients.ts'
import { frontModel } from '#science/fire/front.ts'
import { TAR_ATOMS } from '#science/fire/tar.ts'
import { fuelTable } from '#science/fuel/table.ts'
import { AIR, AIR_MOLES, specificEnthalpy } from '#science/gas/blend.ts'
import { equilibriumAtEnthalpy } from '#science/gas/equilibrium.ts'
import { chemicalHeat, type GasBasis, mixtureTemperature } from '#science/gas/mixture.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Point } from './kit/panel.ts'
import { celsius, steps } from './stoves.ts'

const AMBIENT = 293.15
const PRESSURE = 101325

/** Flame temperature against air ratio: mixed is burnt, and what equilibrium would have. */
export const flameTemperatureFigure = (): Figure => {
  const fuel = fuelTable.get('wood-chips')
  if (fuel === undefined) throw new Error('no chips in the fuel table')
  const closed = frontModel(fuel, 0.1, AMBIENT, medianCoefficients).close(1.5, AMBIENT)
  if (!closed.ok) throw new Error(closed.reason)
  const { front } = closed
  const basis: GasBasis = front
  const { moles } = front
  /** Atoms of a kilogram of gas, the tar's among them [mol/kg]. */
  const gasAtoms = {
    C: (moles.CO + moles.CO2 + moles.CH4 + TAR_ATOMS.C * moles.tar) / front.gas,
    H: (2 * moles.H2 + 2 * moles.H2O + 4 * moles.CH4 + TAR_ATOMS.H * moles.tar) / front.gas,
    O: (moles.CO + 2 * moles.CO2 + moles.H2O + TAR_ATOMS.O * moles.tar) / front.gas,
    N: (2 * moles.N2) / front.gas,
    Ar: moles.Ar / front.gas,
  }
  const airAtoms = {
    C: AIR_MOLES.CO2,
    H: 0,
    O: 2 * (AIR_MOLES.O2 + AIR_MOLES.CO2),
    N: 2 * AIR_MOLES.N2,
    Ar: AIR_MOLES.Ar,
  }
  const at = (ratio: number) => {
    const z = 1 / (1 + ratio * front.stoichiometricAir)
    const enthalpy =
      z * specificEnthalpy(front.unburnt, front.temperature) + (1 - z) * specificEnthalpy(AIR, AMBIENT)
    const released = z * chemicalHeat(basis, 1) - chemicalHeat(basis, z)
    const kept = enthalpy - medianCoefficients.flameRadiation * Math.max(0, released)
    const atoms = Object.fromEntries(
      (['C', 'H', 'O', 'N', 'Ar'] as const).map((e) => [e, z * gasAtoms[e] + (1 - z) * airAtoms[e]]),
    )
    const balanced = equilibriumAtEnthalpy(enthalpy, PRESSURE, atoms, { graphite: true })
    return {
      limit: celsius(mixtureTemperature(basis, z, enthalpy, 1500)),
      shining: celsius(mixtureTemperature(basis, z, kept, 1500)),
      equilibrium: balanced.ok ? celsius(balanced.temperature) : Number.NaN,
    }
  }
  const ratios = steps(0, 4, 81)
  const lineOf = (key: 'limit' | 'shining' | 'equilibrium'): Point[] =>
    ratios.map((ratio) => [ratio, at(ratio)[key]])
  return figurePage({
    title: 'The flame is hottest with just enough air',
    lead: 'The model burns gas as far as its air goes and no further back: mixed is burnt. Chemical equilibrium knows better: near one, hot molecules fall apart again and keep the flame cooler. Where stoves burn, at 1.3 to 3, the two run together.',
    rows: [
      [
        {
          heading: 'Flame, °C',
          x: { label: 'air over the air that the gas needs', from: 0, to: 4, ticks: 4 },
          y: { label: '', from: 600, to: 2200, ticks: 8 },
          height: 300,
          shades: [{ tone: 'ember', strength: 0.08, area: { axis: 'x', from: 1.1, to: 3 } }],
          series: [
            { points: lineOf('equilibrium'), tone: 'ink', dash: true, width: 1.8, label: 'at equilibrium' },
            { points: lineOf('limit'), tone: 'cool', label: 'mixed is burnt' },
            { points: lineOf('shining'), tone: 'ember', label: 'the same, 15 % shone away' },
          ],
          notes: [{ at: [2.05, 2200], text: 'burns clean', anchor: 'middle', dy: 16, tone: 'ember' }],
        },
      ],
    ],
    foot: 'Gas of the front of air-dry chips at 10 % moisture and 1.5 kg of air a kilogram, as hot as it leaves; air of 20 °C; no wall takes heat. The lowest line is what the stove model uses, its walls not yet counted. Below one, equilibrium turns some of the gas over and lays down soot, which costs heat.',
  })
}
