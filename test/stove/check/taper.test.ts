import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { readStove } from '#stove/document/read.ts'

const file = readFileSync(
  fileURLToPath(new URL('../../../examples/redshank.stove.json', import.meta.url)),
  'utf8',
)

/** Redshank with a shell that widens upwards, as a maker would write it. */
const tapered = (top: string): string =>
  file.replace(
    '"bodyDiameter": "100.4 mm ± 0.3 mm",',
    `"bodyDiameter": "100.4 mm ± 0.3 mm", "topBodyDiameter": "${top}",`,
  )

describe('a stove file with a can that tapers', () => {
  it('is read: the bottom and the top as written, the body halfway between', () => {
    const shell = orThrow(readStove(tapered('104.4 mm ± 0.3 mm').replace('103.1 mm', '107.1 mm'))).parts.get(
      'shell',
    )
    if (shell?.form !== 'can') throw new Error('a shell')
    expect(shell.can.taper?.bottom.value).toBeCloseTo(0.1004, 9)
    expect(shell.can.taper?.top.value).toBeCloseTo(0.1044, 9)
    expect(shell.can.bodyDiameter.value).toBeCloseTo(0.1024, 9)
  })

  it('is noted: what follows the cone and what counts it as a cylinder', () => {
    const stove = orThrow(readStove(tapered('104.4 mm ± 0.3 mm').replace('103.1 mm', '107.1 mm')))
    const found = checkStove(stove, null).filter(({ code }) => code === 'can.tapers')
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({ severity: 'note', part: 'shell' })
    expect(found[0]?.sentence).toContain('count it as a cylinder of')
    expect(found[0]?.sentence).toContain('templates follow the cone')
    expect(checkStove(orThrow(readStove(file)), null).some(({ code }) => code === 'can.tapers')).toBe(false)
  })

  it('is refused at the field that says so, where its side leans too far', () => {
    const read = readStove(tapered('250 mm'))
    expect(read.ok).toBe(false)
    if (!read.ok)
      expect(read.problems.map(({ field }) => field).join(' ')).toContain('parts.shell.can.topBodyDiameter')
  })
})
