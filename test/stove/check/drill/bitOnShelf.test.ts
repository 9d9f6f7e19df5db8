import { describe, expect, test } from 'vitest'
import { fromInches } from '#basis/units.ts'
import { contextOf } from '#stove/check/context.ts'
import { bitOnShelf } from '#stove/check/drill/bitOnShelf.ts'
import { bore, brief, canPart, lone, type Openings, rings, round, row, shelf, window } from '../stoves.ts'

const found = (openings: Openings, bits: readonly number[] | null) =>
  bitOnShelf(contextOf(lone(canPart('fuel can', {}, openings)), bits === null ? null : shelf(...bits)))

describe('the bit on the shelf', () => {
  test('owned, or not, or no shelf to look at', () => {
    expect(found({ r: row('secondary', 12, round(6), 60) }, [5, 6, 8])).toEqual([])
    expect(brief(found({ r: row('secondary', 12, round(6), 60) }, [5, 8]))).toEqual([
      'warn bit.not-on-shelf can/r',
    ])
    expect(found({ r: row('secondary', 12, round(6), 60) }, null)).toEqual([])
  })

  test('the nearest owned ones, with the change of area', () => {
    // (5/6)² − 1 = −30.6 %, (8/6)² − 1 = +77.8 %.
    const fix = found({ r: row('secondary', 12, round(6), 60) }, [3, 5, 8, 10])[0]?.fix
    expect(fix).toContain('“5 mm” (area 31 % smaller)')
    expect(fix).toContain('“8 mm” (area 78 % larger)')
    expect(fix).not.toContain('“3 mm”')
    expect(fix).not.toContain('“10 mm”')
    expect(found({ r: row('secondary', 12, round(6), 60) }, [])[0]?.fix).toContain(
      'Put your bits on the shelf',
    )
  })

  test('a window’s area follows its own shape', () => {
    // 10 by 20 with a round foot is 10·15 + 12.5π = 189.27; 9 by 20 is 9·15.5 + 10.125π = 171.31: 9.5 % less.
    const fix = found({ r: row('intake', 6, window(10, 20, 'round'), 60) }, [9])[0]?.fix
    expect(fix).toContain('“9 mm” (area 9.5 % smaller)')
  })

  test('5/8 in is not 16 mm, but 1/4 in is 6.35 mm', () => {
    expect(found({ r: row('intake', 6, round(fromInches(5 / 8) * 1000), 60) }, [16])).toHaveLength(1)
    expect(found({ r: row('intake', 6, round(fromInches(1 / 4) * 1000), 60) }, [6.35])).toEqual([])
  })

  test('floor patterns are drilled, square windows and bores are not', () => {
    expect(found({ p: rings('primary', 4, [[20, 6]]) }, [5])).toHaveLength(1)
    expect(found({ w: row('intake', 6, window(10, 20), 60), b: bore(40, 'bottom') }, [5])).toEqual([])
  })
})
