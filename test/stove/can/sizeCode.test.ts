import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BadInput, type Outcome, orThrow } from '#basis/problem.ts'
import { fromInches, metres, toMillimetres } from '#basis/units.ts'
import rule from '#reference/canCodeRule.json' with { type: 'json' }
import { readSizeCode, type SizeCode, writeSizeCode } from '#stove/can/sizeCode.ts'

const problemOf = (outcome: Outcome<SizeCode>) => {
  if (outcome.ok) throw new Error(`read as ${outcome.value.code}`)
  return outcome.problems[0]!
}

describe('readSizeCode', () => {
  // Can Manufacturers Institute, explanation of dimensional food can standards; 1012 from US Army MD0708.
  test.each(rule.rows as [string, number, number][])(
    'group %s is %f in, %f mm',
    (group, inches, millimetres) => {
      const { diameter, height } = orThrow(readSizeCode(`${group}x${group}`, 'can'))
      expect(toMillimetres(diameter)).toBeCloseTo(millimetres, 9)
      expect(height).toBeCloseTo(inches * 0.0254, 12)
    },
  )

  test.each(['603x700', '603 x 700', '603×700', ' 603 × 700 ', '603X700'])('takes %s', (text) => {
    const { code, diameter, height } = orThrow(readSizeCode(text, 'can'))
    expect(code).toBe('603x700')
    expect(toMillimetres(diameter)).toBeCloseTo(157.1625, 9)
    expect(toMillimetres(height)).toBeCloseTo(177.8, 9)
  })

  test('refuses every pair of last digits from 16 to 99, and says they are sixteenths', () => {
    for (let digits = 16; digits <= 99; digits += 1) {
      const problem = problemOf(readSizeCode(`6${digits}x700`, 'parts.shell.can.code'))
      expect(problem).toMatchObject({ code: 'size-code.sixteenths', field: 'parts.shell.can.code' })
      expect(problem.fix).toContain('from 00 to 15')
      expect(problem.fix).toContain(String(digits))
    }
  })

  test('refuses oblong cans by saying that they are not round', () => {
    const problem = problemOf(readSizeCode('403x610x907', 'code'))
    expect(problem.code).toBe('size-code.oblong')
    expect(problem.fix).toContain('oblong')
  })

  test('tells of both groups when both are wrong', () => {
    const outcome = readSizeCode('619x799', 'code')
    expect(outcome.ok ? [] : outcome.problems.map(({ value }) => value)).toEqual(['“619”', '“799”'])
  })

  test.each([
    ['603', 'size-code.form'],
    ['', 'size-code.form'],
    ['603x', 'size-code.form'],
    ['6x7', 'size-code.form'],
    ['0603x700', 'size-code.form'],
    ['60300x700', 'size-code.form'],
    ['6.3x700', 'size-code.form'],
    ['-603x700', 'size-code.form'],
    ['000x700', 'size-code.zero'],
    [603700, 'size-code.not-text'],
    [null, 'size-code.not-text'],
  ])('refuses %j as %s', (text, code) => {
    expect(problemOf(readSizeCode(text, 'code')).code).toBe(code)
  })
})

describe('writeSizeCode', () => {
  const sixteenths = fc.integer({ min: 1, max: 99 * 16 + 15 })

  test('is undone by reading, for every size a code can write', () => {
    fc.assert(
      fc.property(sixteenths, sixteenths, (across, up) => {
        const [diameter, height] = [fromInches(across / 16), fromInches(up / 16)]
        const back = orThrow(readSizeCode(writeSizeCode(diameter, height), 'code'))
        expect(back.diameter).toBeCloseTo(diameter, 12)
        expect(back.height).toBeCloseTo(height, 12)
        expect(writeSizeCode(back.diameter, back.height)).toBe(back.code)
      }),
    )
  })

  test('takes the nearest sixteenth, never more than 1/32 in away', () => {
    const anyLength = fc.double({ min: 0.002, max: 2.5, noNaN: true })
    fc.assert(
      fc.property(anyLength, (length) => {
        const back = orThrow(readSizeCode(writeSizeCode(metres(length), metres(0.1778)), 'code'))
        expect(Math.abs(back.diameter - length)).toBeLessThanOrEqual(0.0254 / 32 + 1e-12)
      }),
    )
  })

  test.each([0, -0.1, 2.6, Number.NaN, Number.POSITIVE_INFINITY])('refuses %f m', (length) => {
    expect(() => writeSizeCode(metres(length), metres(0.1))).toThrow(BadInput)
  })
})
