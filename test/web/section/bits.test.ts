import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fromMillimetres, toMillimetres } from '#basis/units.ts'
import type { Bit } from '#stove/model.ts'
import { bitChoice } from '#web/section/bits.ts'

const bit = (size: number): Bit => ({ name: `${size} mm`, diameter: fromMillimetres(size) })
const mm = (one: Bit | null): number | null =>
  one === null ? null : Number(toMillimetres(one.diameter).toFixed(3))

describe('bits for a hole', () => {
  const shelf = [bit(10), bit(4), bit(6), bit(6)]

  it('are those on the shelf, one after the other, each once', () => {
    const { less, more, isOwned, owned, usual } = bitChoice('6 mm', fromMillimetres(6), shelf)
    expect([mm(less), mm(more), isOwned]).toEqual([4, 10, true])
    expect(owned.map(mm)).toEqual([4, 6, 10])
    expect(usual.map(mm)).not.toContain(6)
    expect(usual.map(mm)).toContain(6.5)
  })

  it('go on with the usual ones beyond the last that is owned, and come back to it', () => {
    const last = bitChoice('10 mm', fromMillimetres(10), shelf)
    expect(mm(last.more)).toBe(10.5)
    const beyond = bitChoice('10.5 mm', fromMillimetres(10.5), shelf)
    expect(beyond.isOwned).toBe(false)
    expect(mm(beyond.less)).toBe(10)
  })

  it('are the usual ones of the trade where none is owned', () => {
    expect(mm(bitChoice('6 mm', fromMillimetres(6), []).more)).toBe(6.5)
    expect(bitChoice('1/4 in', (0.25 * 0.0254) as Bit['diameter'], []).more?.name).toBe('9/32 in')
  })

  it('never leave out a bit that is owned on the way up', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 3, max: 30 }), { minLength: 1, maxLength: 9 }),
        (sizes) => {
          const all = sizes.map(bit)
          let at = bit(2)
          const seen: (number | null)[] = []
          for (let steps = 0; steps < sizes.length; steps += 1) {
            const { more } = bitChoice(at.name, at.diameter, all)
            if (more === null) break
            seen.push(mm(more))
            at = more
          }
          expect(seen).toEqual([...sizes].sort((a, b) => a - b))
        },
      ),
    )
  })
})
