import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { boxesMeet, liesIn, shapeBox } from '#craft/box.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { Drawing } from '#craft/drawing.ts'
import { textWidth } from '#craft/lettering/measure.ts'
import { fastenersOf } from '#craft/shop/fasteners.ts'
import { openingsIn } from '#craft/shop/making.ts'
import type { BuildStep } from '#craft/steps/step.ts'
import { buildSteps } from '#craft/steps/steps.ts'
import { stepSvg } from '#craft/steps/svg.ts'
import { builtSheet } from '#stove/built/sheet.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import { layouts } from '../../science/layouts.ts'
import { exampleNamed, stoveExamples } from '../../stove/document/examples.ts'
import { everyLayout } from '../everyLayout.ts'
import { anyStove } from '../randomStoves.ts'
import { textsOf } from '../shapes.ts'
import { testStoves } from '../stoves.ts'

const examples = stoveExamples.map(({ text }) => orThrow(readStove(text)))
const named = (name: string): Stove => orThrow(readStove(exampleNamed(name).text))

/** Every opening made and every screw told of in one step, every part placed in one, hosts before guests, all openings before that. */
const isWhole = (stove: Stove): void => {
  const steps = buildSteps(stove)
  const keys = steps.map(({ key }) => key)
  expect(new Set(keys).size, keys.join(', ')).toBe(keys.length)
  const placedAt = new Map<string, number>()
  for (const [index, { places }] of steps.entries()) {
    if (places === null) continue
    expect(placedAt.has(places), places).toBe(false)
    placedAt.set(places, index)
  }
  expect([...placedAt.keys()].sort()).toEqual([...stove.parts.keys()].sort())
  for (const { part, host } of stove.assembly)
    if (host !== null) expect(placedAt.get(host)).toBeLessThan(placedAt.get(part) ?? -1)
  for (const { count, what, where } of fastenersOf(stove)) {
    const told = `${count} × ${what}: ${where}.`
    const telling = steps.filter(({ sentences }) => sentences.includes(told))
    expect(
      telling.map(({ key }) => key),
      told,
    ).toHaveLength(1)
  }
  const sheet = builtSheet(stove)
  for (const { part, opening } of openingsIn(stove)) {
    const made = steps.flatMap((step, index) =>
      step.makes.some((one) => one.part === part && one.opening === opening) ? [index] : [],
    )
    expect(made, `${part}, ${opening}`).toHaveLength(1)
    expect(made[0]).toBeLessThan(placedAt.get(part) ?? -1)
    const lastStep = steps[made[0] ?? 0]
    expect(lastStep?.checks.some((check) => check.part === part && check.opening === opening)).toBe(true)
    expect(sheet.some((line) => line.part === part && line.opening === opening)).toBe(true)
  }
}

/** What is wrong with a picture: words that meet something, anything that runs off it. One expectation a picture: there are many. */
const faultsOf = ({ width, height, shapes }: Drawing): readonly string[] => {
  const page = { left: -1e-6, bottom: -1e-6, right: width + 1e-6, top: height + 1e-6 }
  const boxes = shapes.map((shape) => ({ shape, box: shapeBox(shape) }))
  const words = boxes.flatMap(({ shape, box }) => (shape.kind === 'text' ? [{ text: shape.text, box }] : []))
  // The box round a slanted leader is larger than the leader, and a leader ends beside its words.
  const lines = boxes.filter(
    ({ shape }) =>
      shape.kind !== 'text' &&
      !(shape.kind === 'line' && shape.from.x !== shape.to.x && shape.from.y !== shape.to.y),
  )
  return [
    ...boxes.flatMap(({ shape, box }) =>
      liesIn(box, page) ? [] : [`off the page: ${JSON.stringify(shape)}`],
    ),
    ...words.flatMap((one, index) =>
      words
        .slice(index + 1)
        .flatMap((other) => (boxesMeet(one.box, other.box) ? [`${one.text} / ${other.text}`] : [])),
    ),
    ...words.flatMap((one) =>
      lines.flatMap(({ shape, box }) =>
        boxesMeet(one.box, box) ? [`${one.text} / ${JSON.stringify(shape)}`] : [],
      ),
    ),
    ...(/null|NaN/.test(JSON.stringify(shapes)) ? ['a coordinate that is no number'] : []),
  ]
}
const isLegible = (picture: Drawing): void => expect(faultsOf(picture), picture.title).toEqual([])

const allSteps: readonly (readonly [string, Stove])[] = [
  ...examples.map((stove) => [stove.name, stove] as const),
  ...testStoves.map((make) => [make().name, make()] as const),
]

describe.each(allSteps)('%s', (_, stove) => {
  test('every opening is made once and measured, every part placed once, hosts first', () => isWhole(stove))
  test('every picture is legible and as wide as it says', () => {
    for (const { picture } of buildSteps(stove)) {
      isLegible(picture)
      expect(picture.width).toBeLessThan(95)
      expect(picture.height).toBeLessThan(120)
    }
  })
})

test('every layout of the trade gives sensible steps', () => {
  for (const make of Object.values(layouts)) {
    const stove = make()
    isWhole(stove)
    for (const { picture } of buildSteps(stove)) isLegible(picture)
  }
})

test('100 random stoves of every layout: every opening once, every part once, legible pictures', () => {
  const stoves = everyLayout(100)
  const roles = new Set(stoves.flatMap(({ parts }) => [...parts.values()].map(({ role }) => role)))
  expect([...roles]).toEqual(expect.arrayContaining(['shell', 'riser', 'pot stand', 'damper', 'grate']))
  for (const stove of stoves) {
    isWhole(stove)
    for (const { picture } of buildSteps(stove)) isLegible(picture)
  }
})

test('any stove: every opening once, every part once', () => {
  fc.assert(fc.property(anyStove, isWhole), { numRuns: 60 })
})

test('any stove: no words meet in any picture', () => {
  fc.assert(
    fc.property(anyStove, (stove) => {
      for (const { picture } of buildSteps(stove)) isLegible(picture)
    }),
    { numRuns: 40 },
  )
})

describe('what a step says', () => {
  const step = (stove: Stove, key: string): BuildStep => {
    const found = buildSteps(stove).find((one) => one.key === key)
    if (found === undefined) throw new Error(`no step ${key}`)
    return found
  }

  test('where a row lies, in both systems, from which edge, how well', () => {
    expect(step(named('redshank'), 'mark out shell').checks.map(({ sentence }) => sentence)).toEqual([
      'shell: the ends of the wrap meet within 1 mm (3/64 in): else measure the can again and print for its true size.',
      'intake: 21 mm (53/64 in) from the bottom edge to the hole centre, ± 1 mm (3/64 in).',
      // π × (100.4 + 0.1) / 12 = 26.31
      'intake: 26.3 mm (1 1/16 in) from centre to centre, measured round the wall, ± 1 mm (3/64 in).',
      'intake: number 1 lies at 0° from the front mark, clockwise seen from above.',
      'intake: place 7 (180°) stays whole: it is crossed out on the template.',
    ])
  })

  test('that heights count from the line for the new edge where the bottom is cut off', () => {
    const { sentences, checks } = step(named('greylag'), 'mark out fuel can')
    expect(sentences[0]).toContain('150 mm (5 7/8 in) below the top edge')
    expect(checks.map(({ sentence }) => sentence).join()).toContain(
      'from the line struck for the new bottom edge',
    )
  })

  test('how vanes are bent: how far, which way, over what', () => {
    const { sentences, checks } = step(named('redshank'), 'vanes of concentrator')
    expect(sentences.join(' ')).toMatch(
      /straight edge .* along the dash-dot line and bend the tongue up over it, 30°/,
    )
    expect(sentences.join(' ')).toContain('turns clockwise seen from above')
    expect(checks.map(({ sentence }) => sentence)).toEqual([
      'vanes: 8 of them, all bent up, 30° ± 3° from the disc.',
    ])
  })

  test('what to try when parts come together', () => {
    const sentences = (key: string): string =>
      step(named('redshank'), key)
        .checks.map(({ sentence }) => sentence)
        .join(' ')
    expect(sentences('place fuel can')).toMatch(/drops in and hangs; it does not fall through/)
    expect(sentences('place fuel can')).toMatch(/7\.7 mm \(19\/64 in\) of gap to the wall of shell/)
    expect(sentences('place damper')).toMatch(/turns by hand round shell/)
    expect(sentences('place damper')).toMatch(/9 mm \(23\/64 in\) from the bottom edge of shell/)
    expect(step(named('heron'), 'place grate').sentences.join(' ')).toMatch(/3 × M3/)
  })

  test('how screws are reached in a can that hangs, and that their heads have to pass its ring', () => {
    const said = step(named('greylag'), 'place grate').sentences.join(' ')
    // The ring leaves (129 − (130.175 − 2.7)) / 2 = 0.76 mm; a head wants 3 mm.
    expect(said).toMatch(/do not pass lid ring, which leaves 0\.76 mm \(0\.03 in\) all round/)
    expect(said).toContain('lid ring goes round fuel can from below before the screws do')
    expect(step(named('heron'), 'place grate').sentences.join(' ')).not.toMatch(/lift|do not pass/)
  })

  test('every length in both systems', () => {
    // Of a bit in inches the millimetres stand in the brackets.
    for (const stove of examples)
      for (const { sentences, checks } of buildSteps(stove))
        for (const sentence of [...sentences, ...checks.map((check) => check.sentence)])
          expect(sentence.replace(/ in \([\d.]+ mm\)/g, '')).not.toMatch(/\d mm(?! \()/)
  })
})

describe('cautions', () => {
  const [edges = '', coatings = '', monoxide = '', heat = ''] = MAKING_CAUTIONS

  test.each(examples)('$name: each step carries those that belong to it', (stove) => {
    for (const { key, cautions } of buildSteps(stove)) {
      expect(cautions.length, key).toBeGreaterThan(0)
      for (const caution of cautions) expect(MAKING_CAUTIONS).toContain(caution)
      if (/^(drill|pilot|cut|bore|vanes|ends|bend|deburr|mark|open)/.test(key))
        expect(cautions).toContain(edges)
      if (key === 'burn off') expect(cautions).toEqual(expect.arrayContaining([coatings, monoxide, heat]))
      if (key === 'first burn') expect(cautions).toEqual(expect.arrayContaining([monoxide, heat]))
    }
  })
})

describe('a picture', () => {
  test('shows the holes of its step where they are: read back from the drawing', () => {
    const stove = named('redshank')
    const found = buildSteps(stove).find(({ key }) => key === 'drill bottom of fuel can')?.picture
    const holes = (found?.shapes ?? []).filter(({ kind, layer }) => kind === 'circle' && layer === 'cut')
    expect(holes).toHaveLength(19)
    const outline = found?.shapes.find(({ kind, layer }) => kind === 'circle' && layer === 'paper')
    if (outline?.kind !== 'circle') throw new Error('no outline')
    // Its scale by its own outline: the inside of the 84.6 mm body of 0.17 mm tin.
    const scale = (2 * outline.radius) / (84.6 - 2 * 0.17)
    const pattern = stove.parts.get('fuel can')?.openings.get('floor')
    const radii = pattern?.kind === 'pattern' ? pattern.holes.map(({ radius }) => radius * 1000) : []
    const drawn = holes.map((hole) =>
      hole.kind === 'circle'
        ? Math.hypot(hole.centre.x - outline.centre.x, hole.centre.y - outline.centre.y) / scale
        : Number.NaN,
    )
    const rising = (some: readonly number[]): readonly number[] => [...some].sort((a, b) => a - b)
    for (const [index, radius] of rising(radii).entries()) expect(rising(drawn)[index]).toBeCloseTo(radius, 2)
  })

  test('highlights the new part and only that', () => {
    const steps = buildSteps(named('redshank')).filter(({ places }) => places !== null)
    for (const { picture } of steps) {
      const heavy = picture.shapes.filter(({ layer }) => layer === 'cut')
      expect(heavy.length).toBeGreaterThan(0)
    }
    const fine = steps.map(({ picture }) => picture.shapes.filter(({ layer }) => layer === 'paper').length)
    // The section grows with every part.
    expect(fine).toEqual([...fine].sort((a, b) => a - b))
    expect(fine[0]).toBe(0)
  })

  test('is the same SVG every time, without script or anything fetched', () => {
    const svg = (): readonly string[] => buildSteps(named('redshank')).map(({ picture }) => stepSvg(picture))
    expect(svg()).toEqual(svg())
    for (const one of svg()) {
      expect(one).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/)
      expect(one).not.toMatch(/<script|href|url\(|NaN|undefined/)
    }
  })

  test('parts no figure from its unit', () => {
    for (const stove of examples)
      for (const { picture } of buildSteps(stove))
        for (const { text } of textsOf(picture.shapes)) expect(text).not.toMatch(/^(?:mm|in)\b|\($|\([^)]*$/)
  })

  test('keeps the room its words need', () => {
    for (const { picture } of buildSteps(named('greylag')))
      for (const { text, size } of textsOf(picture.shapes))
        expect(textWidth(text, size)).toBeLessThan(picture.width)
  })
})

test('a band is drawn in its steps as it is cut: with its slanted overlap and its finger tabs', () => {
  const step = buildSteps(named('redshank')).find(({ key }) => /bend.*damper/.test(key))
  const outline =
    step?.picture.shapes.filter((shape) => shape.kind === 'polyline' && shape.layer === 'cut') ?? []
  // Four corners of the strip and two of the slant, six of each of two tabs.
  expect(outline.map((shape) => (shape.kind === 'polyline' ? shape.points.length : 0))).toEqual([18])
})

test('what is said of vanes is led to one of them', () => {
  const step = buildSteps(named('redshank')).find(({ key }) => /vanes/.test(key))
  const shapes = step?.picture.shapes ?? []
  const tongues = shapes.flatMap((shape) =>
    shape.kind === 'polyline' && shape.layer === 'cut' ? [shapeBox(shape)] : [],
  )
  const leaders = shapes.flatMap((shape) =>
    shape.kind === 'line' && shape.layer === 'dimension' ? [shape.from] : [],
  )
  const inside = leaders.filter(({ x, y }) =>
    tongues.some(({ left, right, bottom, top }) => x > left && x < right && y > bottom && y < top),
  )
  expect(inside.length).toBeGreaterThan(0)
})
