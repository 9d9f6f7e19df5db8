import { describe, expect, test } from 'vitest'
import { plainSetup } from '#science/answers/burn/setup.ts'
import { liveBurn } from '#science/answers/live/liveBurn.ts'
import { airShares, answerRows, spokenAnswer } from '#web/answers/rows.ts'
import type { Before } from '#web/stove/liveBurn.ts'
import { example, exampleNames } from '../../science/burn/firing.ts'

const burnt = (name: (typeof exampleNames)[number]) => {
  const outcome = liveBurn(plainSetup(example(name)))
  const moment = outcome.kind === 'burn' ? outcome.moments[Math.floor(outcome.moments.length / 4)] : undefined
  if (outcome.kind !== 'burn' || moment === undefined) throw new Error(`${name} burns`)
  return { burn: outcome.burn, moment }
}

const beforeOf = (name: (typeof exampleNames)[number]): Before => ({
  name: 'Heron',
  stove: example(name),
  ...burnt(name),
})

describe.each(exampleNames)('answers of %s', (name) => {
  const { burn, moment } = burnt(name)

  test('ask the same in every unit, and say it in that unit alone', () => {
    const [metric, inch, both] = (['mm', 'in', 'both'] as const).map((units) =>
      answerRows(burn, moment, null, null, units),
    )
    expect(metric?.map(({ key }) => key)).toEqual(inch?.map(({ key }) => key))
    const text = (rows: typeof metric): string => JSON.stringify(rows)
    expect(text(metric)).not.toMatch(/°F|Btu|\boz\b/)
    expect(text(inch)).not.toMatch(/°C|kW|\d mm/)
    expect(text(both)).toMatch(/kW.*Btu/)
  })

  test('say the firepower of the burn', () => {
    const row = answerRows(burn, moment, null, null, 'mm').find(({ key }) => key === 'firepower')
    expect(Number.parseFloat(row?.value ?? '')).toBeCloseTo(burn.figures.firepower / 1000, 2)
  })

  test('beside themselves differ in nothing', () => {
    const changes = answerRows(burn, moment, { ...beforeOf(name), burn, moment }, null, 'both').flatMap(
      ({ change }) => (change === null ? [] : [`${change.told} ${change.than}`]),
    )
    expect(changes.length).toBeGreaterThan(3)
    expect(new Set(changes)).toEqual(new Set(['the same as Heron']))
  })

  test('part all the air', () => {
    const sum = airShares(moment).reduce((total, { share }) => total + share, 0)
    expect(sum).toBeCloseTo(1, 2)
  })
})

test('a difference from the parent is said in words, more and less the right way round', () => {
  const { burn, moment } = burnt('greylag')
  const rows = answerRows(burn, moment, beforeOf('redshank'), null, 'both')
  const change = (key: string, of = rows): string => {
    const found = of.find((row) => row.key === key)?.change
    return `${found?.told} ${found?.than}`
  }
  expect(change('firepower')).toMatch(/^\d\.\d+ kW more than Heron$/)
  expect(change('time')).toMatch(/ min longer than Heron$/)
  const back = answerRows(burnt('redshank').burn, null, beforeOf('greylag'), null, 'in')
  expect(change('firepower', back)).toMatch(/ Btu\/h less than Heron$/)
  expect(change('charge', back)).toMatch(/ oz less than Heron$/)
})

test('whoever hears the page is told how it burns in one sentence', () => {
  const { burn } = burnt('greylag')
  expect(spokenAnswer(burn, 'Burns clean')).toMatch(/^Burns clean\. .* kW for .*; one litre boils in .*\.$/)
})
