import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { mildDay } from '#science/site.ts'
import type { Passage } from '#science/steady/prediction.ts'
import { readStove } from '#stove/document/read.ts'
import { stoveExamples } from '../../stove/document/examples.ts'
import { predictionOf } from './prediction.ts'

const stoves = stoveExamples.map(({ name, text }) => [name, orThrow(readStove(text))] as const)

describe.each(stoves)('%s: what takes the work of the draught', (_, stove) => {
  const inWind = (speed: number): readonly Passage[] =>
    predictionOf(stove, { site: { ...mildDay, wind: { speed, from: 20 } } }).halfway.passages
  const calm = inWind(0)

  test('all shares together are the whole, in a calm and in wind', () => {
    for (const passages of [calm, inWind(1), inWind(3)]) {
      expect(passages.reduce((sum, { lossShare }) => sum + lossShare, 0)).toBeCloseTo(1, 9)
      for (const { lossShare } of passages) expect(lossShare).toBeGreaterThanOrEqual(0)
    }
  })

  test('a breath of wind parts rows into holes and changes no share', () => {
    const breath = inWind(1e-6)
    expect(breath.map(({ name }) => name)).toEqual(calm.map(({ name }) => name))
    for (const [i, { lossShare }] of calm.entries()) expect(breath[i]?.lossShare).toBeCloseTo(lossShare, 3)
  })

  test('wind straight through the shell is not the draught’s: the intake is choked no more than in a calm', () => {
    const windy = inWind(3)
    const intake = (passages: readonly Passage[]): Passage => {
      const found = passages.find(({ opening }) => opening === 'intake')
      if (found === undefined) throw new Error('no intake')
      return found
    }
    // Far more blows through than goes in to stay.
    expect(Math.abs(intake(windy).backFlow)).toBeGreaterThan(Math.abs(intake(windy).massFlow))
    expect(intake(windy).lossShare).toBeLessThan(intake(calm).lossShare + 0.03)
    // What goes to the fire still goes through the bore, one hole that no wind parts.
    const bore = windy.find(({ name }) => name === 'bore in concentrator')
    expect(bore?.lossShare).toBe(Math.max(...windy.map(({ lossShare }) => lossShare)))
  })
})
