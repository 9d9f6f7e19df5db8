import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { pixelX, pixelY } from '#craft/section/frame.ts'
import { sectionGeometry } from '#craft/section/geometry.ts'
import { momentScene } from '#craft/section/scene.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { handlesOf } from '#web/section/handles.ts'
import { roomOf, stageLayout } from '#web/section/layout.ts'
import { example, exampleNames } from '../../science/burn/firing.ts'

const cutOf = (name: (typeof exampleNames)[number]) =>
  orThrow(sectionGeometry(example(name), 0, { pieces: () => [] }))

describe.each(exampleNames)('the stage of %s', (name) => {
  const cut = cutOf(name)

  test.each([
    [360, 340],
    [620, 400],
    [962, 480],
    [1580, 740],
    [2200, 1100],
  ])('fits a place of %i by %i, words and ruler beside the stove', (width, height) => {
    const { frame, rulerX, words, ground } = stageLayout(width, height, [cut])
    const { radius, top } = roomOf(cut)
    expect(pixelY(frame, top)).toBeGreaterThanOrEqual(0)
    expect(frame.ground).toBeLessThanOrEqual(height)
    const [left, right] = [pixelX(frame, -radius), pixelX(frame, radius)]
    expect(right).toBeLessThanOrEqual(width)
    expect(rulerX - 36).toBeGreaterThanOrEqual(0)
    // Nothing of the ruler lies under the stove, and no words do.
    expect(rulerX + 36).toBeLessThanOrEqual(left + 0.01)
    if (words === null) expect(width).toBeLessThan(620)
    else {
      expect(left - words.left - 20).toBeGreaterThanOrEqual(rulerX + 35)
      expect(right + words.right + 20).toBeLessThanOrEqual(width + 0.01)
    }
    expect(ground[0]).toBeLessThan(left)
    expect(ground[1]).toBeGreaterThan(pixelX(frame, cut.radius))
  })

  test('takes no notice of what flows: a picture that is scrubbed through stands still', () => {
    const burn = orThrow(predictSteady(example(name)))
    if (burn.kind !== 'prediction') throw new Error(`${name} burns`)
    const lit = momentScene(example(name), burn.prediction.halfway).section
    expect(stageLayout(900, 500, [lit])).toEqual(stageLayout(900, 500, [cut]))
  })

  test('has a handle for every opening, each of its own name, in an order that no move changes', () => {
    const stove = example(name)
    const keys = handlesOf(momentScene(stove, null), 'both').map(({ key }) => key)
    expect(new Set(keys).size).toBe(keys.length)
    const openings = [...stove.parts].flatMap(([part, { openings: all }]) =>
      [...all.keys()].map((opening) => ({ part, opening })),
    )
    const refs = handlesOf(momentScene(stove, null), 'mm').flatMap(({ ref }) => (ref === null ? [] : [ref]))
    expect(refs).toEqual(expect.arrayContaining(openings))
    for (const handle of handlesOf(momentScene(stove, null), 'in')) {
      expect(handle.value).not.toBe('')
      if (handle.along !== null) {
        expect(handle.now).toBeGreaterThanOrEqual(handle.least)
        expect(handle.now).toBeLessThanOrEqual(handle.most)
      }
    }
  })
})

test('makes room for a ghost that is larger than the stove', () => {
  const [small, large] = [cutOf('redshank'), cutOf('greylag')]
  const { frame } = stageLayout(900, 500, [small, large])
  expect(pixelY(frame, roomOf(large).top)).toBeGreaterThanOrEqual(0)
  expect(frame.scale).toBeLessThan(stageLayout(900, 500, [small]).frame.scale)
})
