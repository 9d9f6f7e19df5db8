import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Outcome, problemSentence } from '#basis/problem.ts'
import type { QuantityKey } from '#basis/quantities.ts'
import { readLength, readMeasured } from '#basis/text/length.ts'
import { fromInches, fromMillimetres, type Metres } from '#basis/units.ts'
import canCodes from '#reference/canCodeRule.json' with { type: 'json' }
import drills from '#reference/drillFractions.json' with { type: 'json' }

const FIELD = 'parts.shell.openings.intake.hole.diameter'

const value = (text: unknown, key: QuantityKey = 'canHeight'): number => {
  const outcome = readLength(text, FIELD, key)
  if (!outcome.ok) throw new Error(outcome.problems.map(problemSentence).join('\n'))
  return outcome.value
}

const code = (outcome: Outcome<unknown>): string =>
  outcome.ok ? 'read' : (outcome.problems[0]?.code ?? 'none')

describe('forms makers write', () => {
  test.each([
    ['16 mm', fromMillimetres(16)],
    ['16mm', fromMillimetres(16)],
    ['  16  mm ', fromMillimetres(16)],
    ['16\u00a0mm', fromMillimetres(16)],
    ['16\u202fmm', fromMillimetres(16)],
    ['1.6 cm', fromMillimetres(16)],
    ['1,6 cm', fromMillimetres(16)],
    ['0.016 m', fromMillimetres(16)],
    ['0,016 m', fromMillimetres(16)],
    ['16.0 millimetres', fromMillimetres(16)],
    ['16 millimeters', fromMillimetres(16)],
    ['5/8 in', fromInches(0.625)],
    ['5/8 in.', fromInches(0.625)],
    ['5/8 inch', fromInches(0.625)],
    ['5/8"', fromInches(0.625)],
    ['5/8″', fromInches(0.625)],
    ['5/8”', fromInches(0.625)],
    ["5/8''", fromInches(0.625)],
    ['⅝ in', fromInches(0.625)],
    ['⅝"', fromInches(0.625)],
    ['5⁄8 in', fromInches(0.625)],
    ['5∕8 in', fromInches(0.625)],
    ['⁵⁄₈ in', fromInches(0.625)],
    ['½ inch', fromInches(0.5)],
    ['.5 in', fromInches(0.5)],
    ['0.5 inches', fromInches(0.5)],
    ['6 3/16 in', fromInches(6.1875)],
    ['6 3/16"', fromInches(6.1875)],
    ['6³⁄₁₆ in', fromInches(6.1875)],
    ['6-3/16 in', fromInches(6.1875)],
    ['6\u20113/16 in', fromInches(6.1875)],
    ['2-1/4 in', fromInches(2.25)],
    ['1 1/2 in', fromInches(1.5)],
    ['1½"', fromInches(1.5)],
    ['1 ½ in', fromInches(1.5)],
    ['6¾', null],
    ['6¾ in', fromInches(6.75)],
    ['2⅜ in', fromInches(2.375)],
    ['17/16 in', fromInches(1.0625)],
    ['1 ft', fromInches(12)],
    ["1'", fromInches(12)],
    ['1.5 feet', fromInches(18)],
  ] as const)('%j', (text, expected) => {
    const outcome = readLength(text, FIELD, 'canHeight')
    if (expected === null) expect(code(outcome)).toBe('length.no-unit')
    else expect(outcome).toEqual({ ok: true, value: expected })
  })
})

describe('refused, with a sentence', () => {
  test.each([
    ['16', 'length.no-unit'],
    [16, 'length.no-unit'],
    ['6 3/16', 'length.no-unit'],
    ['', 'length.empty'],
    ['   ', 'length.empty'],
    [undefined, 'length.empty'],
    [null, 'length.empty'],
    [true, 'length.not-text'],
    [['16 mm'], 'length.not-text'],
    [{ mm: 16 }, 'length.not-text'],
    [Number.NaN, 'length.not-a-number'],
    [Number.POSITIVE_INFINITY, 'length.not-a-number'],
    ['NaN', 'length.not-a-number'],
    ['NaN mm', 'length.not-a-number'],
    ['Infinity mm', 'length.not-a-number'],
    ['mm', 'length.not-a-number'],
    ['about 16 mm', 'length.not-a-number'],
    ['16. mm', 'length.not-a-number'],
    [',5 cm', 'length.not-a-number'],
    ['1.5/2 in', 'length.not-a-number'],
    ['5 / 8 in', 'length.spaced-fraction'],
    ['1e999 mm', 'length.exponent'],
    ['1.6e1 mm', 'length.exponent'],
    ['1,600 mm', 'length.ambiguous-comma'],
    ['12,345 mm', 'length.ambiguous-comma'],
    ['1,600,000 mm', 'length.separators'],
    ['1,600.5 mm', 'length.separators'],
    ['1.600,5 mm', 'length.separators'],
    ['1.2.3 mm', 'length.separators'],
    ['5/0 in', 'length.zero-denominator'],
    ['2 5/4 in', 'length.improper-fraction'],
    ['16 g', 'length.wrong-kind'],
    ['16 °C', 'length.wrong-kind'],
    ['16 MM', 'length.unknown-unit'],
    ['16 furlongs', 'length.unknown-unit'],
    ['16 mmm', 'length.unknown-unit'],
    ['16 mm mm', 'length.two-units'],
    ['16 mm in', 'length.two-units'],
    ['1 ft 2 in', 'length.two-units'],
    [`1' 2"`, 'length.two-units'],
    ['16 5 mm', 'length.two-numbers'],
    ['16 - 18 mm', 'length.two-numbers'],
    ['16 mm, roughly', 'length.trailing'],
    ['16 mm hole', 'length.trailing'],
    ['5/8 in / 16 mm', 'length.trailing'],
    ['5/8 in (16)', 'length.no-unit'],
    ['5/8 (16 mm)', 'length.no-unit'],
    ['5/8 in (16 mm) or so', 'length.brackets'],
    ['5/8 in (16 mm', 'length.brackets'],
    ['5/8 in ()', 'length.brackets'],
    ['(16 mm)', 'length.brackets'],
    ['16 mm (5/8 in) (16 mm)', 'length.brackets'],
    ['16 mm = 5/8 in = 16 mm', 'length.brackets'],
    ['5/8 in (15 mm)', 'length.dual-mismatch'],
    ['5/8 in (16 g)', 'length.wrong-kind'],
    ['16 mm ± 1 mm', 'length.tolerance-not-here'],
    ['-5 mm', 'length.range'],
    ['−5 mm', 'length.range'],
    ['0 mm', 'length.range'],
    ['0.4 mm', 'length.range'],
    ['60.1 mm', 'length.range'],
    ['16 in', 'length.range'],
    [`${'9'.repeat(99)}m`, 'length.range'],
    ['1'.repeat(400), 'length.too-long'],
    ['16\u0000mm', 'length.invisible'],
    ['16\u00admm', 'length.invisible'],
    ['16 mm\ud800', 'length.invisible'],
  ] as const)('%j: %s', (text, expected) => {
    const outcome = readLength(text, FIELD, 'holeDiameter')
    expect(code(outcome)).toBe(expected)
    if (outcome.ok) return
    const [problem] = outcome.problems
    expect(problem).toMatchObject({ field: FIELD })
    expect(problem?.allowed).not.toBe('')
    expect(problem?.fix).toMatch(/^[A-Z0-9"].*\.$/)
    expect(problem?.value === '').toBe(text === undefined)
    expect(problemSentence(problem as NonNullable<typeof problem>)).not.toMatch(/undefined|\[object/)
  })

  test('sentences say what stood there, what may stand there and what to do', () => {
    const sentence = (text: unknown): string => {
      const outcome = readLength(text, 'hole', 'holeDiameter')
      return outcome.ok ? '' : outcome.problems.map(problemSentence).join('\n')
    }
    expect(sentence(16)).toBe(
      'hole: 16 will not do; allowed is a hole diameter from 0.5 mm to 60 mm. Which unit? Write 16 mm.',
    )
    expect(sentence('60 in')).toBe(
      'hole: 60 in will not do; allowed is a hole diameter from 0.02 in to 2.362 in. If 60 mm was meant, write that.',
    )
    expect(sentence(undefined)).toBe(
      'hole is missing; allowed is a hole diameter from 0.5 mm to 60 mm. Write it as text, with its unit, such as "16 mm" or "5/8 in".',
    )
    expect(sentence(null)).toBe(
      'hole: null (no value) will not do; allowed is a hole diameter from 0.5 mm to 60 mm. Write it as text, with its unit, such as "16 mm" or "5/8 in".',
    )
    expect(sentence(' ')).toBe(
      'hole: empty text will not do; allowed is a hole diameter from 0.5 mm to 60 mm. Write a number and its unit.',
    )
    expect(sentence('1,600 mm')).toBe(
      'hole: 1,600 mm will not do; allowed is a hole diameter from 0.5 mm to 60 mm. Write 1600 or 1.600: the comma can be read both ways.',
    )
    expect(sentence('5/8 in (15 mm)')).toBe(
      'hole: 5/8 in (15 mm) will not do; allowed is two halves that name one length. 5/8 in is 15.875 mm and 15 mm is 0.591 in: they lie 0.875 mm (0.034 in) apart, and rounding explains no more than 0.5 mm. Measure again; if 5/8 in is right write 5/8 in (16 mm), if 15 mm is right write 15 mm.',
    )
  })
})

describe(`drill fractions: ${drills.source}`, () => {
  test.each(drills.rows as [string, number, number][])(
    '%s in = %d in = %d mm',
    (size, inches, millimetres) => {
      expect(value(`${size} in`, 'bitDiameter')).toBe(fromInches(inches))
      expect(value(`${size} in`, 'bitDiameter')).toBeCloseTo(millimetres / 1000, 12)
      expect(value(`${size} in (${millimetres} mm)`, 'bitDiameter')).toBe(fromInches(inches))
    },
  )
})

describe(`can codes: ${canCodes.source}`, () => {
  test.each(canCodes.rows as [string, number, number][])(
    '%s = %d in = %d mm',
    (digits, inches, millimetres) => {
      const text = `${digits.slice(0, -2)} ${Number(digits.slice(-2))}/16 in`
      expect(value(text)).toBe(fromInches(inches))
      expect(value(`${text} (${millimetres} mm)`)).toBe(fromInches(inches))
    },
  )
})

describe('two units that check each other', () => {
  test.each([
    // Common practice, no source: a 7/8 in bit makes a 22 mm hole, a 1/4 in bit a 6 mm one.
    ['7/8 in (22 mm)', fromInches(0.875)],
    ['22 mm (7/8 in)', fromMillimetres(22)],
    ['1/4 in (6 mm)', fromInches(0.25)],
    ['6 mm (1/4 in)', fromMillimetres(6)],
    ['1/4 in = 6 mm', fromInches(0.25)],
    ['1/4"(6mm)', fromInches(0.25)],
    ['3/8 in (10 mm)', fromInches(0.375)],
    ['3/8 in (9.5 mm)', fromInches(0.375)],
    ['3/8 in (9.53 mm)', fromInches(0.375)],
    ['3/8 in (9.525 mm)', fromInches(0.375)],
    ['5/8 in (16 mm)', fromInches(0.625)],
    ['16 mm (5/8 in)', fromMillimetres(16)],
    ['16 mm (0.63 in)', fromMillimetres(16)],
    ['16 mm (0.625 in)', fromMillimetres(16)],
    ['16 mm (1.6 cm)', fromMillimetres(16)],
    ['2.5 in (64 mm)', fromInches(2.5)],
    ['2.5 in (63 mm)', fromInches(2.5)],
    ['6 3/16 in (157 mm)', fromInches(6.1875)],
    ['4 in (102 mm)', fromInches(4)],
    ['102 mm (4 in)', fromMillimetres(102)],
    // To the nearest sixteenth, as read off a tape.
    ['99 mm (3 7/8 in)', fromMillimetres(99)],
  ] as const)('%s: the first half governs', (text, expected) => {
    expect(value(text, 'clearance')).toBe(expected)
  })

  test.each([
    '3/8 in (9 mm)',
    '9 mm (3/8 in)',
    '5/8 in (15 mm)',
    '15 mm (5/8 in)',
    '5/8 in (15.8 mm)',
    '12 mm (1/2 in)',
    '1/2 in (12 mm)',
    '4 mm (3/16 in)',
    '6 3/16 in (160 mm)',
    '160 mm (6 3/16 in)',
    '4 in (100 mm)',
    '100 mm (4 in)',
    '300 mm (1 ft)',
    '2.5 in (65 mm)',
    '16 in (16 mm)',
    '16 mm (16 in)',
    '16 mm (1.5 cm)',
  ])('%s disagrees, and what the message offers instead is read', (text) => {
    const outcome = readLength(text, FIELD, 'clearance')
    expect(code(outcome)).toBe('length.dual-mismatch')
    if (outcome.ok) return
    const fix = outcome.problems[0]?.fix ?? ''
    expect(fix).toMatch(/they lie [\d.]+ mm \([\d.]+ in\) apart/)
    const offers = [...fix.matchAll(/right write (.+?)(?:, if|\.$)/g)].map((found) => found[1] as string)
    expect(offers).toHaveLength(/\b16 in\b/.test(text) && text.includes('16 mm') ? 1 : 2)
    for (const offer of offers) expect(code(readLength(offer, FIELD, 'clearance'))).toBe('read')
  })

  // The rule in whole numbers: n/64 in is n·254/640 mm.
  const sixtyFourths = fc.integer({ min: 1, max: 900 })
  const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))
  const fractionText = (n: number): string => {
    const over = n % 64
    const d = gcd(64, over)
    return [Math.floor(n / 64) || '', over > 0 ? `${over / d}/${64 / d}` : '']
      .filter((part) => part !== '')
      .join(' ')
  }
  const reduced = (n: number): number => 64 / gcd(64, n % 64)

  test('a fraction first is exact: whole millimetres beside it may be half a millimetre off, no more', () => {
    fc.assert(
      fc.property(sixtyFourths, fc.integer({ min: -3, max: 3 }), (n, slip) => {
        const mm = Math.round((n * 254) / 640) + slip
        const agrees = Math.abs(n * 254 - mm * 640) <= 320
        expect(code(readLength(`${fractionText(n)} in (${mm} mm)`, FIELD, 'clearance'))).toBe(
          agrees ? 'read' : 'length.dual-mismatch',
        )
      }),
      { numRuns: 1000 },
    )
  })

  test('a fraction in brackets may be half a sixteenth off above one inch, half a sixty-fourth below', () => {
    fc.assert(
      fc.property(sixtyFourths, fc.integer({ min: -25, max: 25 }), (n, slip) => {
        const tenths = Math.round((n * 254) / 64) + slip
        if (tenths <= 0) return
        const steps = Math.max(n < 64 ? 64 : 16, reduced(n))
        // In sixty-four hundredths of a millimetre; the millimetres stand for half a tenth.
        const agrees = Math.abs(n * 254 - tenths * 64) <= Math.max(32, (64 * 254) / (2 * steps))
        expect(
          code(readLength(`${(tenths / 10).toFixed(1)} mm (${fractionText(n)} in)`, FIELD, 'clearance')),
        ).toBe(agrees ? 'read' : 'length.dual-mismatch')
      }),
      { numRuns: 1000 },
    )
  })
})

describe('measured lengths', () => {
  const DEFAULT = fromMillimetres(0.5)
  const measured = (text: unknown) => readMeasured(text, 'cans.soup.height', 'canHeight', DEFAULT)

  test.each([
    ['103.2 mm ± 0.3 mm', fromMillimetres(103.2), fromMillimetres(0.3)],
    ['103.2 ± 0.3 mm', fromMillimetres(103.2), fromMillimetres(0.3)],
    ['103,2±0,3mm', fromMillimetres(103.2), fromMillimetres(0.3)],
    ['103.2 mm +/- 0.3 mm', fromMillimetres(103.2), fromMillimetres(0.3)],
    ['103.2 mm +- 0.3 mm', fromMillimetres(103.2), fromMillimetres(0.3)],
    ['4 1/16 in ± 1/64 in', fromInches(4.0625), fromInches(1 / 64)],
    ['4 1/16 ± 1/64 in', fromInches(4.0625), fromInches(1 / 64)],
    ['4 1/16 in ± 0.3 mm', fromInches(4.0625), fromMillimetres(0.3)],
    ['4 1/16 in (103 mm) ± 0.3 mm', fromInches(4.0625), fromMillimetres(0.3)],
    ['103.2 mm ± 0 mm', fromMillimetres(103.2), fromMillimetres(0)],
    ['103.2 mm', fromMillimetres(103.2), DEFAULT],
    ['4 1/16 in (103 mm)', fromInches(4.0625), DEFAULT],
  ] as const)('%s', (text, length, tolerance) => {
    expect(measured(text)).toEqual({ ok: true, value: { value: length, tolerance } })
  })

  test.each([
    ['103.2 mm ± 0.3', 'length.no-unit'],
    ['103.2 ± 0.3', 'length.no-unit'],
    ['103.2', 'length.no-unit'],
    [103.2, 'length.no-unit'],
    ['103.2 mm ±', 'length.empty'],
    ['± 0.3 mm', 'length.empty'],
    ['103.2 mm ± 0.3 mm ± 0.3 mm', 'length.two-tolerances'],
    ['103.2 mm ± 20 mm', 'length.range'],
    ['103.2 mm ± -0.3 mm', 'length.range'],
    ['700 mm ± 1 mm', 'length.range'],
    ['103.2 mm ± 3 g', 'length.wrong-kind'],
    ['4 1/16 in (100 mm) ± 1 mm', 'length.dual-mismatch'],
    ['103.2 mm (± 0.3 mm)', 'length.brackets'],
  ] as const)('%s: %s', (text, expected) => {
    expect(code(measured(text))).toBe(expected)
  })
})

describe('whatever is typed', () => {
  const fragment = fc.constantFrom(
    ...[
      '1',
      '16',
      '0',
      '9'.repeat(30),
      '/',
      '5/8',
      '1/64',
      ' ',
      '-',
      '.',
      ',',
      '½',
      '⁄',
      '⅛',
      'mm',
      'in',
      '"',
    ],
    ...[
      "'",
      '″',
      'cm',
      'ft',
      'g',
      '°C',
      '(',
      ')',
      '=',
      '±',
      '+/-',
      'e',
      'NaN',
      '\n',
      '\u00a0',
      '\u200b',
      '𝟙',
      '٣',
    ],
  )
  const typed = fc.oneof(
    fc.array(fragment, { maxLength: 9 }).map((parts) => parts.join('')),
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc.anything(),
  )

  test('gives a finite length in range or a problem, never an exception', () => {
    fc.assert(
      fc.property(typed, (text) => {
        for (const outcome of [
          readLength(text, FIELD, 'holeDiameter'),
          readMeasured(text, FIELD, 'holeDiameter', 0 as Metres),
        ]) {
          if (outcome.ok) {
            const length = typeof outcome.value === 'number' ? outcome.value : outcome.value.value
            expect(length).toBeGreaterThanOrEqual(0.0005)
            expect(length).toBeLessThanOrEqual(0.06)
          } else {
            expect(outcome.problems).toHaveLength(1)
            const [problem] = outcome.problems
            expect(problem?.code).toMatch(/^length\.[a-z-]+$/)
            expect(problem?.fix).not.toBe('')
            expect(problem?.allowed).not.toBe('')
            expect(problem?.value).not.toMatch(/[\n\r]/)
          }
        }
      }),
      { numRuns: 20_000 },
    )
  })
})
