import { describe, expect, it } from 'vitest'
import { fuelTable } from '#science/fuel/table.ts'
import { fuelChoices } from '#web/fuel/fuelChoices.ts'

describe('fuels in a list', () => {
  it('are all there, each by a name of its own, and say the whole label with their pieces', () => {
    expect(fuelChoices.map(({ key }) => key)).toEqual([...fuelTable.keys()])
    expect(new Set(fuelChoices.map(({ name }) => name)).size).toBe(fuelTable.size)
    for (const { key, name, pieces } of fuelChoices) {
      const said = pieces === null ? name : `${name}, ${pieces.slice('Pieces: '.length, -1)}`
      expect(said).toBe(fuelTable.get(key)?.label)
    }
  })

  it('fit a list on a phone: no name is longer than thirty letters', () => {
    for (const { name } of fuelChoices) expect(name.length, name).toBeLessThanOrEqual(30)
  })
})
