import { expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { planDraught } from '#science/draft/build.ts'
import { chargeFuel } from '#science/fuel/charge.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStoveValue } from '#stove/document/read.ts'
import { exampleNamed } from '../../stove/document/examples.ts'

// From the kitchen scale to the bed: the draught's own bed must hold just what was weighed in.
test.each(['heron', 'redshank', 'greylag'])('%s burns the filling that was weighed in its can', (name) => {
  const file = JSON.parse(exampleNamed(name).text)
  file.fuel = {
    own: { name: 'mixed chips', like: 'wood-chips', filling: { weight: '95 g' } },
    level: file.fuel.level,
    moisture: '15 %',
  }
  // The three cans are of different sizes: bring the filling to 190 kg/m³ of each.
  const area = (() => {
    const plan = planDraught(orThrow(readStoveValue(file as JsonValue)).stove)
    if (!plan.ok) throw new Error(plan.reason.sentence)
    return plan.plan.bed
  })()
  const grams = Math.round(190 * area.area * area.depth * 1000)
  file.fuel.own.filling.weight = `${grams} g`
  const { stove } = orThrow(readStoveValue(file as JsonValue))
  const fuel = orThrow(chargeFuel(stove.fuel, 2 * Math.sqrt(area.area / Math.PI)))
  expect(fuel.bulkDensity * area.area * area.depth * 1000).toBeCloseTo(grams, 6)
  expect(fuel.moisture).toBeCloseTo(0.15, 12)
  expect(fuel.label).toBe('mixed chips')
})
