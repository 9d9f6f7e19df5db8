import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BadInput } from '#basis/problem.ts'
import { compare } from '#proof/compare/compare.ts'
import type { Comparison, Contrast, MetricComparison } from '#proof/compare/model.ts'
import { offeredOrder } from '#proof/compare/offeredOrder.ts'
import { welch } from '#proof/statistics/difference.ts'
import { dunnettT3, gamesHowell } from '#proof/statistics/manyComparisons.ts'
import { sampleOf } from '#proof/statistics/sample.ts'
import { type BurnOf, trialsOf } from './burns.ts'

const burnt = (
  times: Readonly<Record<string, readonly number[]>>,
  of: (i: number) => Partial<BurnOf> = () => ({}),
) =>
  Object.entries(times).flatMap(([variant, all]) =>
    all.map((boil, i): BurnOf => ({ variant, boil, ...of(i) })),
  )

const metricOf = ({ metrics }: Comparison, key: string): MetricComparison => {
  const found = metrics.find(({ metric }) => metric.key === key)
  if (found === undefined) throw new Error(`No ${key}`)
  return found
}
const pairOf = (comparison: Comparison, key: string, variant: string, against = 'A'): Contrast => {
  const found = metricOf(comparison, key).contrasts.find(
    (one) => one.variant === variant && one.against === against,
  )
  if (found === undefined) throw new Error(`No ${variant} against ${against}`)
  return found
}
const codes = ({ warnings }: Comparison): readonly string[] => warnings.map(({ code }) => code)

const CLEAR = { A: [9.1, 8.9, 9.2], B: [7.1, 7.3, 7.0] }

describe('two variants', () => {
  const found = compare(trialsOf(burnt(CLEAR)))
  const time = pairOf(found, 'timeToBoil', 'B')

  it('Welch, as the statistics have it', () => {
    const expected = welch(sampleOf(CLEAR.B), sampleOf(CLEAR.A))
    expect(metricOf(found, 'timeToBoil').method.kind).toBe('welch')
    expect(time.difference?.low).toBeCloseTo(expected?.low as number, 9)
    expect(time.difference?.high).toBeCloseTo(expected?.high as number, 9)
    expect(time.relative).toBeCloseTo((7.1333333 - 9.0666667) / 9.0666667, 6)
  })

  it('says what a maker can use', () => {
    expect(time.verdict).toBe('better')
    expect(time.sentence).toBe(
      '“B” boils 0.5 L (0.528 US qt) 1.9 min sooner than “A”. With 3 burns each, the true gain most likely lies between 1.6 and 2.3 min.',
    )
    expect(time.moreSentence).toBeNull()
    expect(found.verdicts[0]?.sentence).toMatch(/^“B” helps\. “B” boils/)
  })

  it('the other way round it harms, by as much', () => {
    const back = compare(trialsOf(burnt(CLEAR)), { reference: 'B' })
    const contrast = metricOf(back, 'timeToBoil').contrasts[0]
    expect(contrast).toMatchObject({ variant: 'A', against: 'B', verdict: 'worse' })
    expect(contrast?.difference?.low).toBeCloseTo(-(time.difference?.high as number), 9)
    expect(contrast?.sentence).toContain('1.9 min later than “B”')
    expect(contrast?.sentence).toContain('the true loss')
  })

  it('may be luck: says so, how wide the doubt is, and how many burns would settle it', () => {
    const contrast = pairOf(
      compare(trialsOf(burnt({ A: [9.1, 8.2, 9.9], B: [7.4, 6.9, 9.0] }))),
      'timeToBoil',
      'B',
    )
    expect(contrast.verdict).toBe('open')
    expect(contrast.sentence).toBe(
      'It looks as if “B” boils 0.5 L (0.528 US qt) 1.3 min sooner than “A”, but that may be luck: with 3 burns each, the truth may be anything from 3.6 min sooner to 1.0 min later.',
    )
    expect(contrast.moreSentence).toMatch(
      /^If the difference is as large as it looks, \d+ burns of each, \d+ more, would show it four times out of five\.$/,
    )
    expect(contrast.more?.forThisDifference).toBeGreaterThan(3)
  })

  it('alike within what matters', () => {
    const many = (base: number): readonly number[] => [-0.05, 0.05, 0, 0.03, -0.03].map((off) => base + off)
    const contrast = pairOf(compare(trialsOf(burnt({ A: many(9), B: many(9.05) }))), 'timeToBoil', 'B')
    expect(contrast.verdict).toBe('alike')
    expect(contrast.sentence).toContain('as good as alike in time to boil')
    expect(contrast.moreSentence).toBeNull()
  })

  it('one burn says nothing', () => {
    const once = compare(trialsOf(burnt({ A: [9, 8.8], B: [5] })))
    const contrast = pairOf(once, 'timeToBoil', 'B')
    expect(contrast).toMatchObject({ verdict: 'unknown', difference: null, relative: null, more: null })
    expect(contrast.sentence).toContain('one burn does not tell')
    expect(contrast.moreSentence).toContain('three times')
    expect(metricOf(once, 'timeToBoil').method.kind).toBe('none')
  })

  it('burns that read alike to the last digit are judged by what the readings may be off', () => {
    const contrast = pairOf(found, 'fuelBurnt', 'B')
    expect(contrast.difference?.standardError).toBeLessThan(1e-9)
    expect(contrast.verdict).toBe('alike')
    expect(contrast.sentence).toContain('read alike in fuel burnt')
    expect(metricOf(found, 'fuelBurnt').notes.join(' ')).toContain('finer instruments')
  })
})

describe('several variants', () => {
  const few = { A: [9.1, 8.2, 9.9], B: [7.4, 6.9, 8.0], C: [8.8, 8.3, 9.6] }

  it('fewer than six burns of a variant: Dunnett’s T3, with the reason', () => {
    const found = compare(trialsOf(burnt(few)))
    const { method } = metricOf(found, 'timeToBoil')
    expect(method).toMatchObject({ kind: 'dunnett-t3', name: 'Dunnett T3' })
    expect(method.reason).toContain('fewer than 6 burns say little')
    const expected = dunnettT3(Object.values(few).map(sampleOf))?.[0]
    const pair = pairOf(found, 'timeToBoil', 'B')
    expect(pair.difference?.value).toBeCloseTo(-(expected?.value as number), 9)
    expect(pair.difference?.low).toBeCloseTo(-(expected?.high as number), 8)
  })

  it('the burns choose by their number, never by how they spread', () => {
    const wild = { A: [9.1, 9.2, 9.15, 9.12], B: [7.4, 3.9, 10.2, 5.1], C: [8.8, 8.7, 8.9, 8.85] }
    const found = metricOf(compare(trialsOf(burnt(wild))), 'timeToBoil')
    expect(found.method.kind).toBe('dunnett-t3')
    expect(found.method.unlikeSpreads).toBeLessThan(0.05)
    expect(found.notes.join(' ')).toContain('more than a quarter of the mean: “B”')
  })

  it('six burns of each and more: Games and Howell anyway; or whatever was asked for', () => {
    const many = Object.fromEntries(
      Object.entries(few).map(([name, some]) => [name, [...some, ...some.map((one) => one + 0.1)]]),
    )
    const found = compare(trialsOf(burnt(many)))
    expect(metricOf(found, 'timeToBoil').method.kind).toBe('games-howell')
    const expected = gamesHowell(Object.values(many).map(sampleOf))?.[0]
    expect(pairOf(found, 'timeToBoil', 'B').difference?.high).toBeCloseTo(-(expected?.low as number), 8)
    const asked = metricOf(compare(trialsOf(burnt(many)), { method: 'tukey' }), 'timeToBoil').method
    expect(asked.kind).toBe('tukey')
    expect(asked.reason).toBe(
      'As asked for. The intervals hold for all pairs together. One spread is taken for all variants: were one to spread twice as much as the rest, all intervals called 95 % would hold in about 94 of 100 such series, at four times as much in about 91.',
    )
    expect(
      metricOf(compare(trialsOf(burnt(many)), { method: 'welch' }), 'timeToBoil').method.reason,
    ).toContain('some show by luck')
    expect(metricOf(compare(trialsOf(burnt(many)), { method: 'blocked' }), 'timeToBoil').method.kind).toBe(
      'none',
    )
  })

  it('a variant burnt once stands beside the comparison and does not spoil it', () => {
    const found = compare(trialsOf(burnt({ ...few, D: [5] })))
    expect(metricOf(found, 'timeToBoil').method.kind).toBe('dunnett-t3')
    expect(pairOf(found, 'timeToBoil', 'D').verdict).toBe('unknown')
    expect(pairOf(found, 'timeToBoil', 'B').difference).toEqual(
      pairOf(compare(trialsOf(burnt(few))), 'timeToBoil', 'B').difference,
    )
  })
})

describe('days and batches', () => {
  const day = (i: number) => `2031-05-${10 + i}`
  // A good day and a bad one for all: far more between days than between stoves.
  const days = { A: [9.1, 6.2, 12.0, 8.1], B: [8.1, 5.3, 11.1, 7.0] }

  it('are taken out where every day has several variants', () => {
    const found = compare(trialsOf(burnt(days, (i) => ({ day: day(i) }))))
    const contrast = pairOf(found, 'timeToBoil', 'B')
    expect(metricOf(found, 'timeToBoil').method).toMatchObject({ kind: 'blocked', blockedBy: ['block'] })
    expect(contrast.verdict).toBe('better')
    expect(contrast.sentence).toContain('what each day gave to all of them taken out')
    // Two variants within days are a paired test: no spread is shared, and nothing is said of it.
    expect(metricOf(found, 'timeToBoil').method.reason).not.toContain('One spread')
    // Welch, without the days, could not tell.
    expect(
      pairOf(compare(trialsOf(burnt(days, (i) => ({ day: day(i) }))), { method: 'welch' }), 'timeToBoil', 'B')
        .verdict,
    ).toBe('open')
  })

  it('a batch of its own beside the day, where the two can be told apart', () => {
    const layout = burnt({ A: [9, 8, 9.3, 8.2], B: [8, 7.1, 8.2, 7.2], C: [8.8, 8, 9.2, 8.4] }, (i) => ({
      day: day(i),
    }))
    const crossed = layout.map((one, n) => ({ ...one, batch: n % 2 ? 'sack 1' : 'sack 2' }))
    // Every day of its own sack: the day says it all.
    const nested = layout.map((one) => ({ ...one, batch: `sack of ${one.day}` }))
    const by = (burns: readonly BurnOf[]) => metricOf(compare(trialsOf(burns)), 'timeToBoil').method.blockedBy
    expect(by(nested)).toEqual(['block'])
    expect(by(crossed)).toEqual(['block'])
    const both = layout.map((one, n) => ({
      ...one,
      batch: (n + Math.floor(n / 4)) % 2 ? 'sack 1' : 'sack 2',
    }))
    expect(by(both)).toEqual(['block', 'batch'])
  })

  it('are left in, and said, where each variant had days of its own', () => {
    const apart = compare(
      trialsOf([
        ...burnt({ A: [9.1, 8.2, 9.9] }, () => ({ day: '2031-05-10' })),
        ...burnt({ B: [7.1, 7.2, 7.0] }, () => ({ day: '2031-05-11' })),
      ]),
    )
    expect(metricOf(apart, 'timeToBoil').method.kind).toBe('welch')
    expect(codes(apart)).toContain('order.no-shared-block')
  })
})

describe('order and drift', () => {
  const order = (places: readonly (readonly [string, number])[]): readonly BurnOf[] =>
    places.map(([variant, boil], i) => ({ variant, boil, place: i + 1 }))

  it('a drift over the day is found, whatever the variants, and told', () => {
    const noise = [0.02, -0.01, 0.03, -0.03, 0.01, -0.02, 0.02, 0]
    const found = compare(
      trialsOf(
        order(
          'ABBABAAB'
            .split('')
            .map((variant, i) => [variant, (variant === 'A' ? 9 : 8) - 0.2 * i + (noise[i] as number)]),
        ),
      ),
    )
    const drift = metricOf(found, 'timeToBoil').drift
    expect(drift).toMatchObject({ over: 'day', found: true })
    expect(drift?.slope.value).toBeCloseTo(-0.2, 1)
    expect(drift?.sentence).toMatch(
      /^With every burn of the day, time to boil falls by 0\.2\d* min .*looks better than it is\.$/,
    )
    expect(codes(found)).toContain('drift')
  })

  it('no drift, no warning', () => {
    const found = compare(
      trialsOf(
        order([
          ['A', 9],
          ['B', 8],
          ['B', 8.1],
          ['A', 9.1],
          ['A', 8.9],
          ['B', 7.9],
        ]),
      ),
    )
    expect(metricOf(found, 'timeToBoil').drift?.found).toBe(false)
    expect(codes(found)).toEqual([])
  })

  it('all of one before all of the other cannot be told from time', () => {
    expect(
      codes(
        compare(
          trialsOf(
            order([
              ['A', 9],
              ['A', 8.8],
              ['B', 7],
              ['B', 7.2],
            ]),
          ),
        ),
      ),
    ).toEqual(['order.separate'])
  })

  it('mostly later in the day', () => {
    const days = ['2031-05-10', '2031-05-11', '2031-05-12']
    const burns = days.flatMap((day, n) =>
      ['A', 'C', 'D', 'B'].map(
        (variant, i): BurnOf => ({ variant, boil: 9 + 0.1 * i + 0.05 * n * (i - 1), day, place: i + 1 }),
      ),
    )
    const found = compare(trialsOf(burns))
    expect(codes(found)).toEqual(['order.later'])
    expect(found.warnings[0]?.sentence).toContain('“B” and “D” were mostly burnt later')
  })

  it('an order is offered: the same seed, the same order; what it can show', () => {
    const offered = offeredOrder(['A', 'B', 'C'], 4, 7)
    expect(offered).toEqual(offeredOrder(['A', 'B', 'C'], 4, 7))
    expect(offered.burns).toHaveLength(12)
    // q(0.95; 3, 6) = 4.339 of any table of the studentized range, over √4.
    expect(offered.reach).toBeCloseTo(4.339 / 2, 3)
    expect(offered.advice.join(' ')).toContain('4 rounds tell a difference to about 11 % either way')
    expect(offeredOrder(['A', 'B'], 1, 1).reach).toBeNull()
    for (const wrong of [
      () => offeredOrder(['A'], 3, 1),
      () => offeredOrder(['A', 'A'], 3, 1),
      () => offeredOrder(['A', 'B'], 0, 1),
      () => offeredOrder(['A', 'B'], 2.5, 1),
      () => offeredOrder(['A', 'B'], 2, -1),
      () => offeredOrder(['A', ' '], 2, 1),
    ])
      expect(wrong).toThrow(BadInput)
  })
})

describe('burnt alike?', () => {
  it.each([
    ['conditions.lid', { pot: { weight: '200 g', diameter: '140 mm', lid: true } }],
    ['conditions.start', { start: 'hot' }],
    [
      'conditions.fuel',
      {
        fuel: {
          kind: 'pellets-6mm',
          moisture: { meter: '10 %' },
          heatingValue: { value: '18.5 MJ/kg', within: '0.5 MJ/kg' },
        },
      },
    ],
    ['conditions.pot', { pot: { weight: '250 g', diameter: '160 mm', lid: false } }],
    ['conditions.wind', { weather: { temperature: '15 °C', boilingPoint: '99 °C', wind: '2 m/s' } }],
    [
      'conditions.moisture',
      {
        fuel: {
          kind: 'wood-chips',
          moisture: { meter: '16 %' },
          heatingValue: { value: '18.5 MJ/kg', within: '0.5 MJ/kg' },
        },
      },
    ],
    ['conditions.heating-value', { fuel: { kind: 'wood-chips', moisture: { meter: '10 %' } } }],
  ])('%s', (code, change) => {
    const found = compare(
      trialsOf(
        burnt(CLEAR).map((burn, i) => ({
          ...burn,
          place: [1, 4, 5, 2, 3, 6][i] as number,
          change: (file) => {
            Object.assign(file.weather, { wind: '0 m/s' })
            if (burn.variant === 'B') Object.assign(file, change)
          },
        })),
      ),
    )
    expect(codes(found)).toContain(code)
  })

  it('a mishap is said, and may be left out', () => {
    const burns = burnt({ A: [9.1, 8.9, 9.2], B: [7.1, 7.3, 7.0, 12] }).map((burn) => ({
      ...burn,
      change: (file: { wentWrong?: string[] | undefined }) => {
        if (burn.boil === 12) file.wentWrong = ['The pot was knocked off.']
      },
    }))
    expect(codes(compare(trialsOf(burns)))).toContain('mishap')
    const without = compare(trialsOf(burns), { mishaps: 'leave out' })
    expect(codes(without)).not.toContain('mishap')
    expect(without.leftOut).toHaveLength(1)
    expect(pairOf(without, 'timeToBoil', 'B').verdict).toBe('better')
  })
})

describe('uncertainty of measurement, beside the spread', () => {
  it('what all burns share falls out of a difference; what each reads does not', () => {
    const burns = burnt({ A: [9.1, 8.9, 9.2], B: [7.1, 7.3, 7.0] }).map((burn) => ({
      ...burn,
      char: burn.variant === 'A' ? 25 : 20,
    }))
    const found = compare(trialsOf(burns))
    const { variants, contrasts } = metricOf(found, 'efficiency')
    const [mine, other] = variants
    const shared = contrasts[0]?.measurement.shared as number
    expect(mine?.measurement.shared).toBeGreaterThan(0.005)
    expect(shared).toBeGreaterThan(0)
    expect(shared).toBeLessThan(0.5 * (mine?.measurement.shared as number))
    // Readings of three burns each add up as squares.
    expect(contrasts[0]?.measurement.readings).toBeCloseTo(
      Math.hypot(mine?.measurement.readings as number, other?.measurement.readings as number),
      9,
    )
  })

  it('what comes with a point is what the metrics say of its burn', () => {
    const found = compare(trialsOf(burnt(CLEAR)))
    const { variants } = metricOf(found, 'efficiency')
    const [point] = variants[0]?.points ?? []
    const { measurement } = variants[0] as (typeof variants)[number]
    expect(Math.hypot(measurement.readings * Math.sqrt(3), measurement.shared)).toBeCloseTo(
      point?.u as number,
      9,
    )
  })
})

describe('bad input is refused with a reason', () => {
  it.each([
    ['one variant', () => compare(trialsOf(burnt({ A: [9, 8] }))), /at least two variants/],
    ['nothing', () => compare([]), /at least two variants/],
    ['no such reference', () => compare(trialsOf(burnt(CLEAR)), { reference: 'Z' }), /reference: Z/],
    ['no such question', () => compare(trialsOf(burnt(CLEAR)), { question: 'soot' }), /question: soot/],
  ])('%s', (_, act, said) => {
    expect(act).toThrow(said)
    expect(act).toThrow(BadInput)
  })
})

describe('whatever is burnt', () => {
  const boil = fc.integer({ min: 30, max: 170 }).map((tenths) => tenths / 10)
  const burn = fc.record({
    variant: fc.constantFrom('A', 'B', 'C'),
    boil,
    day: fc.constantFrom('2031-05-10', '2031-05-11', '2031-05-12'),
    char: fc.option(fc.integer({ min: 1, max: 40 }), { nil: null }),
  })

  it('no NaN, every sentence whole, plain data; the order of the files means nothing', () => {
    fc.assert(
      fc.property(fc.array(burn, { minLength: 2, maxLength: 12 }), (burns) => {
        if (new Set(burns.map(({ variant }) => variant)).size < 2) return
        const placed = burns.map((one, i) => ({ ...one, place: i + 1 }))
        const found = compare(trialsOf(placed))
        const text = JSON.stringify(found)
        expect(JSON.parse(text)).toEqual(found)
        expect(text).not.toMatch(/NaN|undefined|Infinity/)
        for (const { contrasts, notes, drift } of found.metrics)
          for (const said of [...contrasts.map(({ sentence }) => sentence), ...notes, drift?.sentence ?? ''])
            expect(said).not.toMatch(/-\d|\de[-+]?\d/)
        const back = compare(trialsOf([...placed].reverse()))
        for (const [i, { contrasts }] of found.metrics.entries())
          for (const [j, { verdict, sentence }] of contrasts.entries())
            expect(back.metrics[i]?.contrasts[j]).toMatchObject({ verdict, sentence })
      }),
      { numRuns: 25 },
    )
  }, 600_000)
})
