import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { startStove } from '#compose/startStove.ts'
import { placeParts } from '#stove/assembly/place.ts'
import { bodyInside } from '#stove/can/ends.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import { readShelf, type ShelfFile } from '#stove/document/shelf.ts'
import { fuelBedOf } from '#stove/measure/fuelBed.ts'
import type { StartChoice } from '#stove/start/choice.ts'
import { soundStarts, USUAL_BITS } from '#stove/start/ways.ts'

const text = readFileSync('examples/shelf.json', 'utf8')
const file = JSON.parse(text) as ShelfFile
const shelf = orThrow(readShelf(text))
const names = [...shelf.cans.keys()]
const can = (name: string): StartChoice['outer'] => {
  const [item, read] = [file.cans[name], shelf.cans.get(name)]
  if (item === undefined || read === undefined) throw new Error(name)
  return { name, item, can: read }
}
const choice = (outer: string, inner: string, more: Partial<StartChoice> = {}): StartChoice => ({
  name: 'Started',
  outer: can(outer),
  inner: can(inner),
  potStand: null,
  damper: false,
  vanes: false,
  bits: shelf.bits,
  fuel: 'wood-chips',
  potDiameter: null,
  ...more,
})

const pairs = names.flatMap((outer) =>
  names.filter((inner) => inner !== outer).map((inner) => [outer, inner] as const),
)

describe('a stove started from two cans of the shelf', () => {
  it.each([
    ['bare', {}],
    ['with a damper and a pot stand', { damper: true, potStand: can('coffee can') }],
  ] as const)(
    '%s: is sound whatever the cans, or says why there is none',
    (_, more) => {
      let made = 0
      for (const [outer, inner] of pairs) {
        const started = startStove(choice(outer, inner, more))
        if (started.kind === 'cannot') {
          expect(started.sentence, `${inner} in ${outer}`).toMatch(/\. .+\.$/)
          continue
        }
        made += 1
        expect(
          started.findings.filter(({ severity }) => severity === 'stop'),
          `${inner} in ${outer}`,
        ).toEqual([])
        // What is written reads back as the same document.
        const back = orThrow(readStoveDocument(formatStoveFile(started.file)))
        expect(back.stove).toEqual(started.start.stove)
        const placed = orThrow(placeParts(back.stove))
        expect(fuelBedOf(back.stove, placed)).not.toBeNull()
        expect(started.burn.burns, `${inner} in ${outer}: ${started.burn.trouble}`).toBe(true)
        expect(back.stove.parts.has('damper')).toBe('damper' in more)
      }
      // Of 72 ordered pairs, those whose inner one goes into the outer one.
      expect(made).toBeGreaterThan(25)
    },
    600_000,
  )

  it('has its concentrator slit for vanes where they were asked for and have room', () => {
    let made = 0
    for (const [i, [outer, inner]] of pairs.entries()) {
      // A third of the pairs shows it; all of them are tried above.
      if (i % 3 > 0) continue
      const started = startStove(choice(outer, inner, { vanes: true, potStand: can('coffee can') }))
      if (started.kind === 'cannot') continue
      made += 1
      const { stove } = started.start
      const vanes = stove.parts.get('concentrator')?.openings.get('vanes')
      if (vanes?.kind !== 'vanes') throw new Error(`${inner} in ${outer} has none`)
      // Gas comes up through the fuel can and goes on through the pot stand: both have to be open under and over them.
      const corner = Math.hypot(vanes.outerRadius, vanes.width)
      for (const name of ['fuel can', 'pot stand']) {
        const part = stove.parts.get(name)
        if (part?.form !== 'can') throw new Error(`${inner} in ${outer} has no ${name}`)
        expect(corner, `${inner} in ${outer}`).toBeLessThan(bodyInside(part.can).value / 2)
      }
      expect(
        started.findings.filter(({ severity }) => severity === 'stop'),
        `${inner} in ${outer}`,
      ).toEqual([])
      expect(started.burn.burns, `${inner} in ${outer}: ${started.burn.trouble}`).toBe(true)
    }
    expect(made).toBeGreaterThan(5)
  }, 600_000)

  it('hangs a can by its rim where the rim is wider than the opening, and rings it where it is not', () => {
    const byRim = soundStarts(choice('lever-lid tin', 'drawn tomato can')).sound[0]
    expect(byRim?.way.holding).toBe('by its rim')
    expect(byRim?.file.parts['lid ring']).toBeUndefined()
    const byRing = soundStarts(choice('milk powder tin', 'coffee can')).sound[0]
    expect(byRing?.way).toMatchObject({ holding: 'by a ring', floor: 'a grate' })
    expect(byRing?.file.parts).toHaveProperty('lid ring')
    expect(byRing?.file.parts).toHaveProperty('grate')
  })

  it('uses only bits of the shelf, or those of a usual set where the shelf has none', () => {
    const bitsOf = (starts: ReturnType<typeof soundStarts>): readonly string[] =>
      [...JSON.stringify(starts.sound[0]?.file).matchAll(/"bit":"([^"]+)"/g)].map(([, bit]) => bit as string)
    const some = shelf.bits.filter(({ name }) => ['5 mm', '8 mm', '12 mm'].includes(name))
    const used = bitsOf(soundStarts(choice('lever-lid tin', 'drawn tomato can', { bits: some })))
    expect(used.length).toBeGreaterThan(2)
    for (const bit of used) expect(some.map(({ name }) => name)).toContain(bit)
    const usual = USUAL_BITS.map(({ name }) => name)
    for (const bit of bitsOf(soundStarts(choice('lever-lid tin', 'drawn tomato can', { bits: [] }))))
      expect(usual).toContain(bit)
  })

  it('says what stands in the way: a can that is too wide, and bits that are too wide', () => {
    const wide = startStove(choice('bean can', 'coffee can'))
    expect(wide).toMatchObject({ kind: 'cannot' })
    expect(wide.kind === 'cannot' && wide.sentence).toMatch(
      /coffee can in bean can makes no stove that holds/,
    )
    const bits = shelf.bits.filter(({ name }) => name === '18 mm')
    const blunt = startStove(choice('lever-lid tin', 'drawn tomato can', { bits }))
    expect(blunt.kind === 'cannot' && blunt.sentence).toMatch(/Add a bit of 6 to 10 mm/)
  })
})
