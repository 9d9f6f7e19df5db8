import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { lightTheme } from '#craft/section/theme.ts'
import { reportOf } from '#science/answers/burn/report.ts'
import { plainSetup } from '#science/answers/burn/setup.ts'
import { readStove } from '#stove/document/read.ts'
import { besideRows } from '#web/beside/rows.ts'
import { besideSections } from '#web/beside/sections.ts'
import { predictedChange, predictedLine } from '#web/family/predictedLine.ts'

const stoveOf = (name: string) => orThrow(readStove(readFileSync(`examples/${name}.stove.json`, 'utf8')))
const burnOf = (name: string) => {
  const outcome = reportOf(plainSetup(stoveOf(name)), 0)
  if (outcome.kind === 'no burn') throw new Error(`${name} burns`)
  return outcome.report
}

describe('stoves side by side', () => {
  const [redshank, heron, greylag] = [burnOf('redshank'), burnOf('heron'), burnOf('greylag')]

  it('says of each answer how the others differ from the first, in the units that were chosen', () => {
    const rows = besideRows([redshank, heron, null], 'mm')
    const of = (caption: string) => rows.find((row) => row.caption === caption)?.cells
    const power = of('Firepower')
    expect(power?.[0]).toMatchObject({ change: null })
    expect(power?.[0]?.value).toMatch(/kW$/)
    expect(power?.[1]?.change).toMatch(/kW more$/)
    expect(power?.[2]).toEqual({ value: '–', change: null })
    expect(of('How it burns')?.[2]?.value).toBe('does not burn')
    expect(
      besideRows([redshank], 'in').find(({ caption }) => caption === 'Firepower')?.cells[0]?.value,
    ).toMatch(/Btu\/h$/)
  })

  it('finds no difference between a stove and itself', () => {
    for (const { cells } of besideRows([heron, heron], 'both').slice(1))
      expect(cells[1]?.change ?? 'the same').toBe('the same')
    expect(predictedChange(heron, heron, 'both')).toBe('burns as before')
  })

  it('says a change of the prediction one way and back with the words turned round', () => {
    const there = predictedChange(greylag, redshank, 'mm')
    const back = predictedChange(redshank, greylag, 'mm')
    expect(there).toMatch(/kW more, .*longer/)
    expect(back).toMatch(/kW less, .*shorter/)
    expect(predictedLine(greylag, 'mm')).toMatch(/^[\d.]+ kW for [\d.]+ min, 1 L boils in [\d.]+ min/)
  })

  it('draws all to one scale: a stove beside itself is the same picture, beside a larger one a smaller one', () => {
    const [small, large] = [stoveOf('redshank'), stoveOf('greylag')]
    const draw = (...stoves: ReturnType<typeof stoveOf>[]) =>
      besideSections(
        stoves.map((stove) => ({ stove, burn: null })),
        lightTheme,
      )
    const [one, other] = draw(small, small)
    expect(one).toBe(other)
    expect(draw(small, large)[0]).not.toBe(draw(small)[0])
    expect(draw(large, small)[0]).toBe(draw(large)[0])
  })
})
