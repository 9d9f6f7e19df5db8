import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { readLength } from '#basis/text/length.ts'
import { nextStep, writingOf } from '#basis/text/writing.ts'
import type { Metres } from '#basis/units.ts'
import { METRIC_BITS } from '#stove/bit/series.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStoveValue } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Stove } from '#stove/model.ts'
import { bendVanes, countPattern, countVanes, patternCounts, setBore, stepBore } from '#stove/moves/face.ts'
import { drillWith, nextBit, sizeHole, sizesOf, stepHole } from '#stove/moves/hole.ts'
import { type OpeningRef, openingIn } from '#stove/moves/move.ts'
import { countRow, moveRow, rowOf, rowRange, stepRow, toggleLeftOut, turnRow } from '#stove/moves/row.ts'
import { addRow, removeOpening, setDuty } from '#stove/moves/rows.ts'
import { fillTo, raisePart, setPotGap, stepFuel, stepPotGap, turnPart } from '#stove/moves/whole.ts'

const NAMES = ['redshank', 'heron', 'greylag'] as const

const fileOf = (name: (typeof NAMES)[number]): StoveFile =>
  JSON.parse(readFileSync(new URL(`../../../examples/${name}.stove.json`, import.meta.url), 'utf8'))

const read = (file: StoveFile): Stove => orThrow(readStoveValue(file as unknown as JsonValue)).stove

const rowsOf = (stove: Stove): readonly OpeningRef[] =>
  [...stove.parts].flatMap(([part, { openings }]) =>
    [...openings].flatMap(([opening, { kind }]) => (kind === 'row' ? [{ part, opening }] : [])),
  )

const GREYLAG_RING = { part: 'fuel can', opening: 'ring' }

describe('the hand a length is written in', () => {
  test.each([
    ['27 mm', 0.0304, '30 mm'],
    ['3/4 in', 0.0222, '7/8 in'],
    ['5/8 in (16 mm)', 0.0222, '7/8 in (22 mm)'],
    ['1.5 in', 0.0381, '1.5 in'],
    ['2.7 cm', 0.0304, '3 cm'],
    ['140 mm (5 1/2 in)', 0.1, '100 mm (3 15/16 in)'],
    ['135 mm ± 1 mm', 0.12, '120 mm ± 1 mm'],
    ['44.5 mm', 0.0455, '46 mm'],
  ])('%s goes on as %s', (text, value, expected) => {
    const writing = writingOf(text, 'holeHeight')
    expect(writing.write(writing.snap(value as Metres))).toBe(expected)
  })

  test('what it writes reads back as the length on its grain, whatever the length', () => {
    const texts = ['27 mm', '3/4 in', '5/8 in (16 mm)', '16 mm (5/8 in)', '1.5 in (38 mm)', '2.7 cm', '0.2 m']
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        (text, value) => {
          const writing = writingOf(text, 'holeHeight')
          const snapped = writing.snap(value as Metres)
          if (snapped === 0) return
          const again = orThrow(readLength(writing.write(snapped), 'height', 'holeHeight'))
          expect(again).toBeCloseTo(snapped, 9)
        },
      ),
    )
  })

  test('a step goes to the next mark, from off the marks too', () => {
    const mm = writingOf('44.5 mm', 'holeHeight')
    expect(nextStep(mm, 0.0445 as Metres, 1)).toBeCloseTo(0.045, 12)
    expect(nextStep(mm, 0.0445 as Metres, -1)).toBeCloseTo(0.044, 12)
    expect(nextStep(mm, 0.045 as Metres, 1, true)).toBeCloseTo(0.05, 12)
    const inches = writingOf('3/4 in', 'holeHeight')
    expect(nextStep(inches, inches.value, 1)).toBeCloseTo((25.4 * 25) / 32 / 1000, 12)
  })
})

describe('moving a row', () => {
  test.each(NAMES)(
    '%s: wherever a hand drags a row, the file reads, and says so from the same edge',
    (name) => {
      const file = fileOf(name)
      const stove = read(file)
      fc.assert(
        fc.property(
          fc.constantFrom(...rowsOf(stove)),
          fc.double({ min: -0.1, max: 0.5, noNaN: true }),
          (ref, height) => {
            const move = moveRow(stove, file, ref, height)
            if (move === null) throw new Error('A row moves')
            const moved = move.change(file)
            const [before, after] = [openingIn(file, ref), openingIn(moved, ref)]
            expect(after).toEqual({ ...before, height: (after as { height: string }).height })
            const range = rowRange(stove, ref)
            const now = rowOf(read(moved), ref)?.height ?? -1
            const wanted = Math.max(range?.least ?? 0, Math.min(range?.most ?? 0, height))
            expect(Math.abs(now - wanted)).toBeLessThan(0.00051)
          },
        ),
        { numRuns: 60 },
      )
    },
  )

  test('goes up by a millimetre though it is measured from the top', () => {
    const file = fileOf('greylag')
    const stove = read(file)
    const up = stepRow(stove, file, GREYLAG_RING, 1)
    expect(up?.label).toBe('move ring to 19 mm')
    const moved = up?.change(file) as StoveFile
    expect(openingIn(moved, GREYLAG_RING)).toMatchObject({ height: '19 mm', from: 'top' })
    const rose = (rowOf(read(moved), GREYLAG_RING)?.height ?? 0) - (rowOf(stove, GREYLAG_RING)?.height ?? 0)
    expect(rose).toBeCloseTo(0.001, 9)
    expect(stepRow(stove, file, GREYLAG_RING, -1, true)?.label).toBe('move ring to 25 mm')
  })

  test('touches neither the file it is given nor any other part', () => {
    const file = fileOf('greylag')
    const kept = structuredClone(file)
    const moved = moveRow(read(file), file, GREYLAG_RING, 0.1)?.change(file)
    expect(file).toEqual(kept)
    expect(moved?.parts.shell).toBe(file.parts.shell)
  })
})

describe('counting and leaving out', () => {
  const intake = { part: 'shell', opening: 'intake' }

  test('forgets left-out places that are no more, and leaves a hole', () => {
    const file = fileOf('greylag')
    expect(openingIn(countRow(file, intake, 7)?.change(file) as StoveFile, intake)).not.toHaveProperty(
      'leftOut',
    )
    expect(openingIn(countRow(file, intake, 20)?.change(file) as StoveFile, intake)).toMatchObject({
      count: 20,
      leftOut: [8],
    })
    const one = countRow(file, intake, 0)?.change(file) as StoveFile
    expect(openingIn(one, intake)).toMatchObject({ count: 1 })
    expect(() => read(one)).not.toThrow()
  })

  test('toggling a place twice gives the file back', () => {
    const file = fileOf('greylag')
    for (const place of [1, 8, 14]) {
      const once = toggleLeftOut(file, intake, place)?.change(file) as StoveFile
      expect(once).not.toEqual(file)
      expect(toggleLeftOut(once, intake, place)?.change(once)).toEqual(file)
    }
    expect(toggleLeftOut(file, intake, 15)).toBeNull()
  })

  test('never leaves the last hole out', () => {
    const file = fileOf('greylag')
    const two = countRow(file, intake, 2)?.change(file) as StoveFile
    const left = toggleLeftOut(two, intake, 1)?.change(two) as StoveFile
    expect(toggleLeftOut(left, intake, 2)).toBeNull()
  })

  test('turns a staggered row to where the hand has it', () => {
    const file = fileOf('greylag')
    const staggered = {
      ...file,
      parts: { ...file.parts, shell: { ...file.parts.shell } },
    } as StoveFile
    const row = openingIn(staggered, intake)
    ;(staggered.parts.shell as { openings: object }).openings = { intake: { ...row, stagger: true } }
    const turned = turnRow(staggered, intake, 40)?.change(staggered) as StoveFile
    expect(rowOf(read(turned), intake)?.bearing).toBeCloseTo(40, 0)
    const back = turnRow(file, intake, 360)?.change(file) as StoveFile
    expect(back).toEqual(file)
  })
})

describe('sizes of holes', () => {
  const screws = { part: 'fuel can', opening: 'grate screws' }
  const windows = { part: 'pot stand', opening: 'windows' }

  test('steps through bits and writes the bit', () => {
    const file = fileOf('greylag')
    const hole = rowOf(read(file), GREYLAG_RING)?.hole
    if (hole?.shape !== 'round') throw new Error('The ring is drilled')
    const larger = nextBit(hole.diameter, METRIC_BITS, 1)
    const smaller = nextBit(hole.diameter, METRIC_BITS, -1)
    expect([smaller?.name, larger?.name]).toEqual(['9.9 mm', '10.1 mm'])
    if (larger === null) throw new Error('There are larger bits')
    const moved = drillWith(GREYLAG_RING, larger).change(file)
    expect(openingIn(moved, GREYLAG_RING)).toMatchObject({ hole: { bit: '10.1 mm' } })
    expect(nextBit(1, METRIC_BITS, 1)).toBeNull()
  })

  test('leaves what a bit decides to the bit', () => {
    const file = fileOf('greylag')
    expect(sizeHole(file, screws, 'diameter', 0.005)).toBeNull()
    expect(sizesOf(file, windows)).toEqual(['window width', 'window height'])
    const wider = stepHole(file, windows, 'window width', 1)
    expect(wider?.label).toBe('make the window width of windows 23 mm')
    expect(openingIn(wider?.change(file) as StoveFile, windows)).toMatchObject({
      hole: { window: { width: '23 mm', height: '26 mm' } },
    })
  })
})

describe('discs', () => {
  test('a bore in the maker’s unit', () => {
    const file = fileOf('greylag')
    const bore = { part: 'concentrator', opening: 'bore' }
    expect(openingIn(setBore(file, bore, 0.0553)?.change(file) as StoveFile, bore)).toMatchObject({
      diameter: '55 mm',
    })
    expect(stepBore(file, bore, -1, true)?.label).toBe('make bore 55 mm')
    expect(setBore(file, GREYLAG_RING, 0.05)).toBeNull()
  })

  test('rings of a floor one by one', () => {
    const file = fileOf('greylag')
    const floor = { part: 'grate', opening: 'floor' }
    const pattern = openingIn(file, floor)
    if (pattern?.kind !== 'pattern') throw new Error('The floor is a pattern')
    expect(patternCounts(pattern)).toEqual([
      { ring: 0, count: 8, name: 'ring at 22 mm' },
      { ring: 1, count: 18, name: 'ring at 44 mm' },
    ])
    const more = countPattern(file, floor, 1, 20)?.change(file) as StoveFile
    expect(openingIn(more, floor)).toMatchObject({
      layout: { rings: [{ count: 8 }, { count: 20, bearing: '10 deg' }], centre: true },
    })
    const heron = fileOf('heron')
    const sunflower = countPattern(heron, floor, null, 25)?.change(heron) as StoveFile
    expect(openingIn(sunflower, floor)).toMatchObject({
      layout: { sunflower: { count: 25, margin: '8 mm' } },
    })
  })

  test('vanes are bent and counted', () => {
    const file = fileOf('redshank')
    const [part, disc] = Object.entries(file.parts).find(([, { role }]) => role === 'concentrator') ?? []
    const opening = Object.entries(disc?.openings ?? {}).find(([, { kind }]) => kind === 'vanes')?.[0] ?? ''
    const ref = { part: part ?? '', opening }
    expect(openingIn(bendVanes(file, ref, 99)?.change(file) as StoveFile, ref)).toMatchObject({
      angle: '90 deg',
    })
    expect(openingIn(countVanes(file, ref, 6)?.change(file) as StoveFile, ref)).toMatchObject({ count: 6 })
  })
})

describe('fuel, pot, parts', () => {
  test('fills no higher than the can', () => {
    const file = fileOf('greylag')
    expect(fillTo(file, 0.0704).change(file).fuel.level).toBe('70 mm')
    expect(fillTo(file, 1, 0.1).change(file).fuel.level).toBe('100 mm')
    expect(stepFuel(file, 1).label).toBe('fill fuel to 91 mm')
  })

  test('a pot that is let down sits on the rim again', () => {
    const file = fileOf('heron')
    const up = stepPotGap(file, 1, true)?.change(file) as StoveFile
    expect(up.pot).toEqual({ diameter: '140 mm', gap: '5 mm' })
    expect(setPotGap(up, -1)?.change(up)).toEqual(file)
    expect(setPotGap({ ...file, pot: undefined }, 0.01)).toBeNull()
  })

  test('turns a damper, half a degree fine', () => {
    const file = fileOf('redshank')
    const turned = turnPart('damper', 372.3).change(file)
    expect(turned.assembly.find(({ part }) => part === 'damper')).toMatchObject({ turned: '12.5 deg' })
    expect(
      turnPart('damper', 360)
        .change(file)
        .assembly.find(({ part }) => part === 'damper'),
    ).not.toHaveProperty('turned')
  })

  test('raises what slides and nothing else', () => {
    const file = fileOf('greylag')
    expect(raisePart(file, 'grate', 0.0204)?.change(file).assembly[3]).toMatchObject({ raised: '20 mm' })
    expect(raisePart(file, 'concentrator', 0.02)).toBeNull()
  })
})

describe('rows that come and go', () => {
  test.each(NAMES)('%s: a new row finds its place, and taken away leaves the file as it was', (name) => {
    const file = fileOf(name)
    const stove = read(file)
    const { move, ref } = addRow(stove, file, 'fuel can', 'secondary', {
      name: '5 mm',
      diameter: 0.005 as Metres,
    })
    const added = move.change(file)
    expect(ref.opening).toBe('ring 2')
    expect(rowOf(read(added), ref)?.count).toBe(12)
    expect(read(removeOpening(ref).change(added))).toEqual(stove)
    expect(openingIn(setDuty(ref, 'primary').change(added), ref)).toMatchObject({ duty: 'primary' })
  })
})
