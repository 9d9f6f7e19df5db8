import { describe, expect, it } from 'vitest'
import { halfTold } from '#proof/trial/halfTold.ts'
import { waterBoilingTrial } from './waterBoiling.ts'

const text = (change: object): string => JSON.stringify({ ...waterBoilingTrial(), ...change })

describe('a trial file that is half told', () => {
  it('is known by what is still to say, and by nothing being wrong', () => {
    expect(halfTold(text({ pot: {}, phases: [] }))).toBeNull()
    expect(halfTold(text({ pot: {} }))).toMatchObject({ file: { name: 'worked example' }, missing: 2 })
    expect(halfTold(text({ pot: { weight: '1000' } }))).toBeNull()
    expect(halfTold(text({}))).toBeNull()
  })

  it('tells its name and its stove, and is a trial at all', () => {
    expect(halfTold(text({ pot: {}, name: '' }))).toBeNull()
    expect(halfTold(text({ pot: {}, stove: {} }))).toBeNull()
    for (const other of ['', '{', '[]', 'null', '{}', '{ "format": "tinwright/stove@1" }'])
      expect(halfTold(other)).toBeNull()
  })
})
