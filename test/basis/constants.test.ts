import { describe, expect, test } from 'vitest'
import {
  AVOGADRO_CONSTANT,
  BOLTZMANN_CONSTANT,
  DRY_AIR_GAS_CONSTANT,
  MOLAR_GAS_CONSTANT,
  NORMAL_TEMPERATURE,
  PLANCK_CONSTANT,
  SPEED_OF_LIGHT,
  STANDARD_ATMOSPHERE,
  STANDARD_GRAVITY,
  STANDARD_PRESSURE,
  STEFAN_BOLTZMANN_CONSTANT,
} from '#basis/constants.ts'
import reference from '#reference/constants.json' with { type: 'json' }

const constants = {
  AVOGADRO_CONSTANT,
  BOLTZMANN_CONSTANT,
  MOLAR_GAS_CONSTANT,
  NORMAL_TEMPERATURE,
  PLANCK_CONSTANT,
  SPEED_OF_LIGHT,
  STANDARD_ATMOSPHERE,
  STANDARD_GRAVITY,
  STANDARD_PRESSURE,
  STEFAN_BOLTZMANN_CONSTANT,
}

describe(reference.source, () => {
  test.each(reference.rows as [keyof typeof constants, number, number][])(
    '%s = %d',
    (name, value, tolerance) => {
      expect(Math.abs(constants[name] - value)).toBeLessThanOrEqual(tolerance * value)
    },
  )
})

test('dry air of CIPM-2007 has the gas constant of ISO 2533, 287.05287 J/(kg K), to its carbon dioxide', () => {
  // ISO 2533 has 28.96442 g/mol, with less CO2 and more argon: 0.004 % apart.
  expect(DRY_AIR_GAS_CONSTANT / 287.05287).toBeCloseTo(1, 4)
})
