import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import published from '#reference/foodCans.json' with { type: 'json' }
import { FOOD_CANS, findFoodCan, NAMED_CANS, OTHER_CANS } from '#stove/can/foodCans.ts'
import { readSizeCode } from '#stove/can/sizeCode.ts'

type Row = [name: string, code: string, diameter: number, height: number, ounces: number, millilitres: number]

// Can Manufacturers Institute, dimensional food can standards.
describe('the public table', () => {
  test.each(published.rows as Row[])('%s is %s', (name, code, diameter, height, _ounces, millilitres) => {
    const can = FOOD_CANS.find((one) => one.code === code)
    expect(can?.name).toBe(name)
    expect(can?.fromMemory).toBe(false)
    const size = orThrow(readSizeCode(code, 'code'))
    expect(toMillimetres(size.diameter)).toBeCloseTo(diameter, 9)
    expect(toMillimetres(size.height)).toBeCloseTo(height, 9)
    // The source rounds millilitres to five digits.
    expect(Math.abs(can!.capacity! * 1e6 - millilitres)).toBeLessThan(6e-5 * millilitres)
  })

  test('has the 20 rows of the source and no others', () => {
    expect(FOOD_CANS.map(({ code }) => code)).toEqual((published.rows as Row[]).map(([, code]) => code))
  })
})

describe('other named sizes', () => {
  const retrieved = Object.entries(published.otherRetrieved as Record<string, string[][]>).flatMap(
    ([source, rows]) => rows.map(([name, code]) => [source, name!, code!] as const),
  )

  test.each(retrieved)('%s has %s, %s', (_source, _name, code) => {
    expect(OTHER_CANS.filter((can) => can.code === code && !can.fromMemory)).not.toEqual([])
  })

  test('claims no source for a size that source does not have', () => {
    for (const { code, source } of OTHER_CANS.filter(({ fromMemory }) => !fromMemory)) {
      const site = source.split(',')[0]!
      expect(
        retrieved.some(([where, , size]) => where.startsWith(site) && size === code),
        code,
      ).toBe(true)
    }
  })

  test('whatever no source was read for says so, and only that', () => {
    expect(OTHER_CANS.filter(({ fromMemory }) => fromMemory).map(({ code }) => code)).toEqual([
      '211x300',
      '307x315',
      '404x414',
    ])
  })

  test('every code reads back as itself', () => {
    for (const { code } of NAMED_CANS) expect(orThrow(readSizeCode(code, 'code')).code).toBe(code)
  })
})

describe('findFoodCan', () => {
  test.each([
    ['No. 10', '603x700'],
    ['#10', '603x700'],
    ['no 10', '603x700'],
    ['603 × 700', '603x700'],
    ['no. 2½', '401x411'],
    ['8z tall', '211x304'],
    ['TUNA', '307x113'],
    ['us gallon paint', '610x708'],
    ['307x113', '307x113'],
  ])('%s is %s', (wanted, code) => {
    expect(findFoodCan(wanted)?.code).toBe(code)
  })

  test('of two names for one can, the one of the public table', () => {
    expect(findFoodCan('603x700')?.name).toBe('No. 10')
  })

  test.each(['', 'No. 1', 'No. 100', '603x701', '1'])('knows no %j', (wanted) => {
    expect(findFoodCan(wanted)).toBeNull()
  })
})
