import { type Expression, expression } from './expression.ts'

/**
 * The metrics of the published water-boiling protocol (WBT 4.2) and of ISO 19867-1, in their own symbols and in their
 * own units: grams, minutes, degrees Celsius, kilojoules per kilogram. All of them FROM MEMORY: neither text lay
 * before us; no conformity is claimed. Constants: 4.186 kJ/(kg K) and 2260 kJ/kg for water in the pot, 2257 kJ/kg for
 * water in the fuel, as the protocol has them, from memory.
 */
export type Unit = 'g' | '°C' | 'min' | 'kJ/kg' | 'kJ' | '1' | 'g/min' | 'W' | 'g/L' | 'kJ/L'

/** Something read or looked up. `#` stands for the phase: c cold start, h hot start, s simmer. */
export interface Term {
  readonly key: string
  readonly symbol: string
  readonly name: string
  readonly unit: Unit
}

export interface Formula extends Term {
  readonly formula: Expression
  /** Which phases have it. */
  readonly phases: readonly ('high power' | 'simmer')[]
  /** What a comparison looks at; the others lead there. */
  readonly metric: boolean
  readonly note?: string
}

const term = (key: string, symbol: string, name: string, unit: Unit): Term => ({ key, symbol, name, unit })

// biome-ignore format: a table
export const TERMS: readonly Term[] = [
  term('fi', 'f_#i', 'fuel at the start', 'g'),
  term('ff', 'f_#f', 'fuel left at the end', 'g'),
  term('c', 'c_#', 'char made', 'g'),
  term('P', 'P', 'empty pot', 'g'),
  term('Pi', 'P_#i', 'pot with water at the start', 'g'),
  term('Pf', 'P_#f', 'pot with water at the end', 'g'),
  term('Ti', 'T_#i', 'water at the start', '°C'),
  term('Tf', 'T_#f', 'water at the end', '°C'),
  term('Ta', 'T_a', 'air', '°C'),
  term('Tb', 'T_b', 'boiling point there', '°C'),
  term('ti', 't_#i', 'start of the phase', 'min'),
  term('tf', 't_#f', 'end of the phase', 'min'),
  term('tb', 't_#b', 'boil', 'min'),
  term('m', 'm', 'moisture of the fuel, wet basis', '1'),
  term('L', 'LHV', 'lower heating value of the dry fuel', 'kJ/kg'),
  term('Lc', 'LHV_char', 'lower heating value of the char', 'kJ/kg'),
]

const BOTH = ['high power', 'simmer'] as const
const HIGH = ['high power'] as const
const LOW = ['simmer'] as const

const row = (
  phases: Formula['phases'],
  metric: boolean,
  key: string,
  symbol: string,
  name: string,
  unit: Unit,
  formula: string,
  note?: string,
): Formula => ({
  key,
  symbol,
  name,
  unit,
  formula: expression(formula),
  phases,
  metric,
  ...(note === undefined ? {} : { note }),
})

/** In the order they are worked out: each asks only for what stands above it. */
// biome-ignore format: a table
export const FORMULAS: readonly Formula[] = [
  row(HIGH, true, 'timeToBoil', 'Δt_#', 'time to boil', 'min', '{tb} − {ti}'),
  row(HIGH, true, 'timeToBoilT', 'Δt_#^T', 'time to boil, temperature-corrected', 'min', '{timeToBoil}·75 / ({Tb} − {Ti})', 'As if the water had been 75 °C below its boiling point at the start.'),
  row(BOTH, false, 'duration', 'Δt', 'length of the phase', 'min', '{tf} − {ti}'),
  row(BOTH, true, 'fuelBurnt', 'f_#m', 'fuel burnt, moist', 'g', '{fi} − {ff}'),
  row(BOTH, false, 'EHV', 'EHV', 'effective heating value, its water driven off', 'kJ/kg', '{L}·(1 − {m}) − {m}·(4.186·({Tb} − {Ta}) + 2257)'),
  row(BOTH, true, 'fuelEnergy', 'E_#', 'energy in the fuel burnt, char included', 'kJ', '{fuelBurnt}·{EHV} / 1000'),
  row(BOTH, true, 'dryFuel', 'f_#d', 'dry fuel equivalent, energy form', 'g', '({fuelBurnt}·{EHV} − {c}·{Lc}) / {L}', 'Char counts as fuel not used. What follows rests on this form.'),
  row(BOTH, false, 'dryFuelFixed', 'f_#d (fixed factors)', 'dry fuel equivalent, older form', 'g', '{fuelBurnt}·(1 − 1.12·{m}) − 1.5·{c}', 'Two factors for all fuels: shown beside the energy form, used for nothing.'),
  row(BOTH, false, 'dryFuelGap', 'f_#d (fixed factors) − f_#d', 'what the older form says more', 'g', '{dryFuelFixed} − {dryFuel}'),
  row(BOTH, false, 'vapour', 'w_#v', 'water boiled away', 'g', '{Pi} − {Pf}'),
  row(BOTH, false, 'usefulHeat', 'Q_#', 'heat taken up by the water', 'kJ', '(4.186·({Pi} − {P})·({Tf} − {Ti}) + 2260·{vapour}) / 1000'),
  row(BOTH, true, 'efficiencyNoChar', 'h_# (no char credit)', 'thermal efficiency, char counted as fuel used', '1', '{usefulHeat} / {fuelEnergy}'),
  row(BOTH, true, 'efficiency', 'h_#', 'thermal efficiency, char counted as left', '1', '1000·{usefulHeat} / ({dryFuel}·{L})'),
  row(BOTH, true, 'burningRate', 'r_#b', 'burning rate', 'g/min', '{dryFuel} / {duration}'),
  row(BOTH, true, 'firepower', 'FP_#', 'firepower', 'W', '{dryFuel}·{L} / (60·{duration})'),
  row(BOTH, true, 'usefulPower', 'Q_#/Δt', 'power taken up by the water', 'W', '1000·{usefulHeat} / (60·{duration})'),
  row(HIGH, false, 'waterBoiled', 'w_#r', 'effective water boiled', 'g', '({Pf} − {P})·({Tf} − {Ti}) / ({Tb} − {Ti})'),
  row(LOW, false, 'waterBoiled', 'w_#r', 'water left at the end', 'g', '{Pf} − {P}'),
  row(BOTH, true, 'specificFuel', 'SC_#', 'specific fuel consumption', 'g/L', '1000·{dryFuel} / {waterBoiled}'),
  row(HIGH, true, 'specificFuelT', 'SC_#^T', 'specific fuel consumption, temperature-corrected', 'g/L', '{specificFuel}·75 / ({Tb} − {Ti})'),
  row(HIGH, true, 'specificEnergyT', 'SE_#^T', 'specific energy consumption, temperature-corrected', 'kJ/L', '{specificFuelT}·{L} / 1000'),
  row(BOTH, true, 'charYield', 'C/B', 'char yield by weight (ISO: char mass productivity)', '1', '{c} / {fuelBurnt}'),
  row(BOTH, true, 'charEnergyYield', 'C·Q_net,char/(B·Q_net,af)', 'char yield by energy (ISO: char energy productivity)', '1', '{c}·{Lc} / ({fuelBurnt}·{EHV})'),
  row(BOTH, false, 'isoEfficiencyNoChar', 'η (ISO 19867-1)', 'thermal efficiency, ISO symbols, no char credit', '1', '1000·{usefulHeat} / ({fuelBurnt}·{EHV})', 'Q/(B·Q_net,af), with B = f_#m and Q_net,af = EHV.'),
  row(BOTH, false, 'isoEfficiency', 'η_char (ISO 19867-1)', 'thermal efficiency, ISO symbols, char credited', '1', '1000·{usefulHeat} / ({fuelBurnt}·{EHV} − {c}·{Lc})', 'Q/(B·Q_net,af − C·Q_net,char).'),
]

/** Highest over lowest firepower; asks for both phases. */
export const TURNDOWN: Term = term('turndown', 'TDR', 'turndown ratio', '1')
