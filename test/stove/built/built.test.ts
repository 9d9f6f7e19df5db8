import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { blankBuilt, formatBuiltFile } from '#stove/built/blank.ts'
import type { Measure } from '#stove/built/measure.ts'
import { measureText, plausibleOff } from '#stove/built/plausible.ts'
import { readBuilt } from '#stove/built/read.ts'
import { builtSheet } from '#stove/built/sheet.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { readStove, readStoveDocument } from '#stove/document/read.ts'
import { anyStove } from '../../craft/randomStoves.ts'
import { testStoves } from '../../craft/stoves.ts'
import { stoveExamples } from '../document/examples.ts'

const plans = stoveExamples.map(({ name, text }) => ({ name, plan: orThrow(readStoveDocument(text)) }))
const exampleSheet = readFileSync(new URL('../../../examples/redshank.built.json', import.meta.url), 'utf8')
const redshank = plans.find(({ name }) => name.startsWith('redshank'))?.plan as (typeof plans)[0]['plan']

type Group = { [key: string]: unknown }

/** A sheet with some of its blanks filled in, in plain metric text. */
const filled = (measures: readonly Measure[], stove: string, read: (one: Measure) => number | null) => {
  const sheet: Group = { format: 'tinwright/built@1', stove }
  for (const one of measures) {
    const value = read(one)
    if (value === null) continue
    let holder = sheet
    for (const key of one.path.slice(0, -1)) {
      holder[key] ??= {}
      holder = holder[key] as Group
    }
    const exact = { length: `${value * 1000} mm`, angle: `${value} deg`, mass: `${value * 1000} g` }
    const kind = ['vane angle', 'first bearing'].includes(one.kind)
      ? 'angle'
      : one.quantity === 'mass' || one.quantity === 'fuelWeight'
        ? 'mass'
        : 'length'
    const text =
      one.quantity === 'patternCount'
        ? value
        : one.quantity === 'fuelMoisture'
          ? `${value * 100} %`
          : exact[kind]
    holder[one.path.at(-1) as string] = one.readings === null ? text : [text]
  }
  return JSON.stringify(sheet)
}

describe('the as-built sheet', () => {
  const measuresEvery = (stove: Parameters<typeof builtSheet>[0]) => {
    const sheet = builtSheet(stove)
    for (const [name, part] of stove.parts) {
      expect(sheet.some((one) => one.part === name && one.opening === null)).toBe(true)
      for (const [opening, { kind }] of part.openings) {
        const lines = sheet.filter((one) => one.part === name && one.opening === opening)
        const keys = lines.map((one) => one.kind)
        if (kind === 'row')
          expect(keys).toEqual(expect.arrayContaining(['row count', 'opening height', 'first bearing']))
        if (kind === 'pattern') expect(keys).toEqual(['pattern count', 'hole diameter'])
        if (kind === 'bore') expect(keys).toEqual(['bore diameter'])
        if (kind === 'vanes') expect(keys).toEqual(['vane count', 'vane angle'])
      }
    }
    expect(new Set(sheet.map(({ path }) => path.join('\u0000'))).size).toBe(sheet.length)
  }

  test.each(plans)('asks for every part and opening of $name', ({ plan }) => measuresEvery(plan.stove))
  test.each(testStoves.map((make) => make()))('asks for every part and opening of $name', measuresEvery)
  test('asks for every part and opening of any stove', () => {
    fc.assert(fc.property(anyStove, measuresEvery), { numRuns: 100 })
  })

  test('asks for the gap between two walls, through a lid ring too, and for none with one wall', () => {
    const gaps = plans.map(({ name, plan }) => [
      name,
      builtSheet(plan.stove).filter(({ kind }) => kind === 'wall gap').length,
    ])
    expect(Object.fromEntries(gaps)).toEqual({
      'greylag.stove.json': 1,
      'heron.stove.json': 0,
      'redshank.stove.json': 1,
    })
  })
})

describe.each(plans)('$name', ({ plan }) => {
  test('left blank, the sheet gives the stove as planned', () => {
    const text = formatBuiltFile(blankBuilt(plan.stove))
    const built = orThrow(readBuilt(text, plan))
    expect(built.differences).toEqual([])
    expect(built.unmeasured).toHaveLength(builtSheet(plan.stove).length)
    const { name, about, ...rest } = built.stove
    const { name: planned, about: _, ...asPlanned } = plan.stove
    expect(rest).toEqual(asPlanned)
    expect(name).toBe(`${planned}, as built`)
    expect(about).toContain(`The stove “${planned}” as measured after building`)
  })

  test('filled in as planned, it changes nothing but what a rounding changes', () => {
    const measures = builtSheet(plan.stove)
    const built = orThrow(
      readBuilt(
        filled(measures, plan.stove.name, ({ planned }) => planned),
        plan,
      ),
    )
    for (const { off } of built.differences) expect(Math.abs(off ?? 0)).toBeLessThan(1e-9)
  })

  test('whatever is measured, within reason, is what the stove as built has', () => {
    const measures = builtSheet(plan.stove).filter(
      ({ kind, planned }) => planned !== null && !['row count', 'fuel weight'].includes(kind),
    )
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.25, max: 0.25, noNaN: true }), { minLength: 60, maxLength: 60 }),
        (shares) => {
          const wanted = new Map(
            measures.map((one, index) => {
              const off = (shares[index % shares.length] ?? 0) * (plausibleOff(one) ?? 0)
              const value = (one.planned ?? 0) + (one.quantity === 'patternCount' ? Math.round(off) : off)
              return [
                one,
                one.kind === 'first bearing' || one.kind === 'vane angle' ? Number(value.toFixed(3)) : value,
              ]
            }),
          )
          const outcome = readBuilt(
            filled(measures, plan.stove.name, (one) => wanted.get(one) ?? null),
            plan,
          )
          // Measures drawn anyhow need not add up to a stove; those that do must be found in it.
          if (!outcome.ok) return
          const now = builtSheet(outcome.value.stove)
          for (const [one, value] of wanted) {
            if (['wall gap', 'part weight', 'stove weight'].includes(one.kind)) continue
            const found = now.find(({ path }) => path.join() === one.path.join())?.planned ?? Number.NaN
            const turned = one.kind === 'first bearing' ? ((found - value + 540) % 360) - 180 : found - value
            expect(Math.abs(turned), one.path.join('.')).toBeLessThan(1e-6)
          }
          expect(readStove(formatStoveFile(outcome.value.file))).toEqual({
            ok: true,
            value: outcome.value.stove,
          })
        },
      ),
      { numRuns: 40 },
    )
  })
})

describe('the example sheet', () => {
  test('is accepted by an independent validator, as every blank sheet is', () => {
    const schema = JSON.parse(
      readFileSync(new URL('../../../schema/built.schema.json', import.meta.url), 'utf8'),
    ) as object
    const check = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true }).compile(schema)
    for (const text of [exampleSheet, ...plans.map(({ plan }) => formatBuiltFile(blankBuilt(plan.stove)))]) {
      check(JSON.parse(text))
      expect(check.errors).toBeNull()
    }
    expect(check({ ...JSON.parse(exampleSheet), colour: 'red' })).toBe(false)
  })

  test('says it is invented', () => {
    expect(exampleSheet).toContain('Invented demo data')
  })

  test('puts two readings of a hole together by area, and keeps one reading as it was written', () => {
    const { file, stove, remarks } = orThrow(readBuilt(exampleSheet, redshank))
    const intake = stove.parts.get('shell')?.openings.get('intake')
    // √(12.3 × 12.1), worked out by hand.
    expect(intake?.kind === 'row' && intake.hole.shape === 'round' ? intake.hole.diameter : 0).toBeCloseTo(
      0.0121996,
      5,
    )
    expect(JSON.stringify(file.parts.shell)).toContain('"height":"22 mm"')
    expect(JSON.stringify(file.parts['fuel can'])).toContain('"from":"top"')
    expect(stove.parts.get('fuel can')?.openings.get('ring')).toMatchObject({
      height: expect.closeTo(0.1008875, 6),
    })
    expect(remarks).toEqual([])
  })

  /** One opening of a sheet. */
  const openingOf = (
    sheet: { readonly parts: Record<string, Group> },
    part: string,
    opening: string,
  ): Group => (sheet.parts[part] as { readonly openings: Record<string, Group> }).openings[opening] as Group

  const changed = (change: (sheet: Group & { parts: Record<string, Group> }) => void) => {
    const sheet = JSON.parse(exampleSheet) as Group & { parts: Record<string, Group> }
    change(sheet)
    return orThrow(readBuilt(JSON.stringify(sheet), redshank))
  }

  test('a hole too many, spread evenly, and a place that stays whole', () => {
    const intake = (more: Group) =>
      changed((sheet) => {
        Object.assign(openingOf(sheet, 'shell', 'intake'), more)
      })
        .stove.parts.get('shell')
        ?.openings.get('intake')
    expect(intake({ count: 12, leftOut: [] })).toMatchObject({ count: 12, leftOut: [] })
    expect(intake({ count: 10, leftOut: [7, 8] })).toMatchObject({ count: 12, leftOut: [7, 8] })
  })

  test('another number of floor holes: the area is right, and it is said that the places are not asked', () => {
    const { stove, remarks } = changed((sheet) => {
      Object.assign(openingOf(sheet, 'fuel can', 'floor'), {
        count: 18,
      })
    })
    const floor = stove.parts.get('fuel can')?.openings.get('floor')
    expect(floor?.kind === 'pattern' ? floor.holes.length : 0).toBe(18)
    expect(remarks.join()).toContain('18 holes instead of 19')
  })

  test('a weighed filling becomes a fuel of the maker’s own', () => {
    const { stove } = changed((sheet) => {
      sheet.fuel = { level: '80 mm', weight: '84 g' }
    })
    expect(stove.fuel.own?.name).toBe('wood-chips, as weighed')
    expect(stove.fuel.own?.bulk?.density).toBeGreaterThan(100)
    expect(stove.fuel.moisture).toBe(0.12)
  })

  test('says where gap and diameters disagree, where a can stands off the middle, and where the tin is not as given', () => {
    const { remarks } = changed((sheet) => {
      Object.assign(sheet.parts['fuel can'] as Group, { gap: ['9 mm', '9.4 mm'], weight: '72 g' })
    })
    expect(remarks.join(' ')).toMatch(/gap round fuel can was measured as 9\.2 mm .* leave 7\.7/)
    expect(remarks.join(' ')).toMatch(/fuel can weighs 35 % more than its tin as given/)
    const off = changed((sheet) => {
      Object.assign(sheet.parts['fuel can'] as Group, { gap: ['4 mm', '8 mm', '11.5 mm', '7.5 mm'] })
    })
    expect(off.remarks.join(' ')).toContain('stands off the middle')
  })

  test('what is far off and confirmed is taken', () => {
    const { stove } = changed((sheet) => {
      Object.assign(openingOf(sheet, 'shell', 'intake'), {
        diameter: ['15 mm'],
      })
      sheet.confirmed = ['parts.shell.openings.intake.diameter']
    })
    expect(stove.parts.get('shell')?.openings.get('intake')).toMatchObject({ hole: { diameter: 0.015 } })
  })
})

test('a measure reads in both systems', () => {
  expect(measureText({ quantity: 'holeHeight' }, 0.021)).toBe('21 mm (53/64 in)')
  expect(measureText({ quantity: 'mass' }, 0.112)).toBe('112 g (3.95 oz)')
  expect(measureText({ quantity: 'boreDiameter' }, 0.01215, true)).toBe('12.15 mm (31/64 in)')
})

test('a can that tapers is measured at both edges, and comes back so', () => {
  const file = JSON.parse(stoveExamples.find(({ name }) => name.startsWith('heron'))?.text ?? '')
  file.parts.riser.can = { bodyDiameter: '84 mm', topBodyDiameter: '80 mm', height: '146 mm' }
  const plan = orThrow(readStoveDocument(JSON.stringify(file)))
  const lines = builtSheet(plan.stove).filter(
    ({ part, kind }) => part === 'riser' && kind.endsWith('body diameter'),
  )
  expect(lines.map(({ path, planned }) => [path[2], planned])).toEqual([
    ['bodyDiameter', expect.closeTo(0.084, 9)],
    ['topBodyDiameter', expect.closeTo(0.08, 9)],
  ])
  const sheet = {
    format: 'tinwright/built@1',
    stove: 'Heron',
    parts: { riser: { bodyDiameter: ['84.4 mm'], topBodyDiameter: ['80.2 mm', '80.6 mm'] } },
  }
  const { stove } = orThrow(readBuilt(JSON.stringify(sheet), plan))
  const riser = stove.parts.get('riser')
  expect(riser?.form === 'can' ? riser.can.taper : null).toMatchObject({
    bottom: { value: expect.closeTo(0.0844, 9) },
    top: { value: expect.closeTo(0.0804, 9) },
  })
})
