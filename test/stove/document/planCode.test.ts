import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { LONGEST_CODE, planCode, readPlanCode } from '#stove/document/planCode.ts'
import { readStove } from '#stove/document/read.ts'

const files = readdirSync('examples')
  .filter((name) => name.endsWith('.stove.json'))
  .map((name) => [name, readFileSync(`examples/${name}`, 'utf8')] as const)

describe('the code of a plan', () => {
  test.each(files)('%s goes on paper and comes back as the same stove', (_, file) => {
    const code = planCode(file) as string
    expect(code).toMatch(/^TINWRIGHT1:[0-9A-Z $%*+\-./:]+$/)
    expect(code.length).toBeLessThan(1900)
    const back = orThrow(readPlanCode(code))
    expect(orThrow(readStove(back))).toEqual(orThrow(readStove(file)))
    // A scanner may add a line's end.
    expect(readPlanCode(`${code}\n`)).toEqual(readPlanCode(code))
  })

  test('codes on paper stay readable: this one was written with the first dictionary', () => {
    const code = readFileSync('test/stove/document/firstPlanCode.txt', 'utf8')
    expect(JSON.parse(orThrow(readPlanCode(code)))).toEqual({
      format: 'tinwright/stove@1',
      name: 'Sandpiper',
      about: 'A few words, ½ in and °.',
    })
  })

  test('a stove too long for any code has none', () => {
    // Noise does not pack.
    let seed = 1
    const noise = Array.from({ length: 6000 }, () => {
      seed = (seed * 48271) % 2147483647
      return String.fromCharCode(33 + (seed % 90))
    }).join('')
    expect(planCode(JSON.stringify({ about: noise }))).toBeNull()
  })

  test('one wrong letter never gives another stove', () => {
    const code = planCode(files[0]?.[1] as string) as string
    fc.assert(
      fc.property(fc.nat(code.length - 1), fc.constantFrom(...'0123456789ABCXYZ $%:'), (at, letter) => {
        fc.pre(code[at] !== letter)
        const read = readPlanCode(code.slice(0, at) + letter + code.slice(at + 1))
        // The last bits of a packed text may be filling, and nothing comes of them.
        expect(!read.ok || read.value === orThrow(readPlanCode(code))).toBe(true)
      }),
      { numRuns: 500 },
    )
  })

  test.each([
    ['', 'begins with TINWRIGHT1:'],
    ['TINWRIGHT2:00', 'begins with TINWRIGHT1:'],
    ['TINWRIGHT1:', 'checksum'],
    ['TINWRIGHT1:abc', 'capitals'],
    ['TINWRIGHT1:0', 'whole to the end'],
    [`TINWRIGHT1:${'0'.repeat(LONGEST_CODE)}`, 'at most 4296 letters'],
  ])('%s is refused with a sentence', (text, why) => {
    const read = readPlanCode(text)
    expect(read.ok ? '' : read.problems[0]?.allowed).toContain(why)
  })
})
