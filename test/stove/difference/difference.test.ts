import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { differenceLine, stoveDifference } from '#stove/difference/difference.ts'
import type { StoveFile } from '#stove/document/schema.ts'

const file = (name: string): StoveFile =>
  JSON.parse(readFileSync(`examples/${name}.stove.json`, 'utf8')) as StoveFile

/** A file as it is edited by hand: nothing about it is sure. */
type Loose = ReturnType<typeof JSON.parse>

/** A copy of Redshank after something was done to it. */
const changed = (change: (stove: Loose) => void): readonly string[] => {
  const after = structuredClone(file('redshank')) as Loose
  change(after)
  return stoveDifference(file('redshank'), after as StoveFile).map(differenceLine)
}

describe('what was changed from one stove to another', () => {
  it.each(['redshank', 'heron', 'greylag'])('is nothing from %s to itself', (name) => {
    expect(stoveDifference(file(name), file(name))).toEqual([])
  })

  it('tells no difference that is only one of writing', () => {
    expect(
      changed(({ parts }) => {
        parts['fuel can'].openings.ring.height = '0.016 m'
        parts.shell.openings.intake.bearing = '360 deg'
        parts.damper.openings.windows.leftOut = []
      }),
    ).toEqual([])
  })

  it.each<readonly [string, (stove: Loose) => void, string]>([
    [
      'a count',
      ({ parts }) => {
        parts.shell.openings.intake.count = 14
      },
      'shell, intake: 12 → 14 holes',
    ],
    [
      'a bit',
      ({ parts }) => {
        parts['fuel can'].openings.ring.hole = { bit: '8 mm' }
      },
      'fuel can, ring: 7 mm (9/32 in) → 8 mm (5/16 in)',
    ],
    [
      'a height from the top, which is higher when it is less',
      ({ parts }) => {
        parts['fuel can'].openings.ring.height = '10 mm'
      },
      'fuel can, ring: 6 mm (15/64 in) higher: 16 mm (5/8 in) → 10 mm (25/64 in)',
    ],
    [
      'a height from the bottom',
      ({ parts }) => {
        parts.shell.openings.intake.height = '18 mm'
      },
      'shell, intake: 3 mm (1/8 in) lower: 21 mm (53/64 in) → 18 mm (45/64 in)',
    ],
    [
      'a position left out and one drilled again',
      ({ parts }) => {
        parts.shell.openings.intake.leftOut = [1]
      },
      'shell, intake: left out at 1, drilled again at 7',
    ],
    [
      'a bore',
      ({ parts }) => {
        parts.concentrator.openings.bore.diameter = '44 mm'
      },
      'concentrator, bore: 4 mm (5/32 in) wider: 40 mm (1 9/16 in) → 44 mm (1 3/4 in)',
    ],
    [
      'vanes',
      ({ parts }) => {
        parts.concentrator.openings.vanes.angle = '40 deg'
      },
      'concentrator, vanes: bent 30 deg → 40 deg',
    ],
    [
      'a pattern',
      ({ parts }) => {
        parts['fuel can'].openings.floor.layout.hexagonal.count = 31
      },
      'fuel can, floor: 19 → 31 holes',
    ],
    [
      'a turned damper',
      ({ assembly }) => {
        assembly[1].turned = '345 deg'
      },
      'damper: turned 15° anticlockwise',
    ],
    [
      'the fuel',
      ({ fuel }) => {
        fuel.kind = 'twigs'
      },
      'fuel: wood-chips → twigs',
    ],
    [
      'how high it is filled',
      ({ fuel }) => {
        fuel.level = '72 mm'
      },
      'fuel: filled 10 mm (25/64 in) lower: 82 mm (3 1/4 in) → 72 mm (2 13/16 in)',
    ],
    [
      'the pot',
      ({ pot }) => {
        pot.diameter = '140 mm'
      },
      'pot: 20 mm (25/32 in) wider: 120 mm (4 3/4 in) → 140 mm (5 1/2 in)',
    ],
    [
      'a new row',
      ({ parts }) => {
        parts['fuel can'].openings.second = {
          kind: 'row',
          duty: 'secondary',
          hole: { bit: '5 mm' },
          count: 12,
          height: '60 mm',
        }
      },
      'fuel can, second: new: 12 × 5 mm (13/64 in), secondary',
    ],
    [
      'a row taken out',
      ({ parts }) => {
        delete parts['pot stand'].openings.breathers
      },
      'pot stand, breathers: taken out: 10 × 8 mm (5/16 in), tertiary',
    ],
    [
      'a row called otherwise',
      ({ parts }) => {
        parts.shell.openings['air in'] = parts.shell.openings.intake
        delete parts.shell.openings.intake
      },
      'shell, intake: called “air in” now',
    ],
    [
      'another can',
      ({ parts }) => {
        parts['pot stand'].can = { code: '404x700' }
      },
      'pot stand: another can: 401x411 → 404x700',
    ],
    [
      'a can cut shorter',
      ({ parts }) => {
        parts['pot stand'].trim.height = '80 mm'
      },
      'pot stand: trimmed 8 mm (5/16 in) shorter: 88 mm (3 7/16 in) → 80 mm (3 1/8 in)',
    ],
    [
      'an end',
      ({ parts }) => {
        parts.shell.top = { end: 'open' }
      },
      'shell: top a lever lid’s ring → cut out',
    ],
    [
      'a part taken away',
      ({ parts, assembly }) => {
        delete parts.damper
        assembly.splice(1, 1)
      },
      'damper: taken away (damper)',
    ],
    [
      'the remarks',
      (stove) => {
        stove.about = 'Burnt twice.'
      },
      'remarks: rewritten',
    ],
  ])('says %s', (_, change, line) => {
    expect(changed(change)).toEqual([line])
  })

  it('tells lengths as whoever reads wants them, in whatever unit they were written', () => {
    const after = structuredClone(file('redshank')) as Loose
    after.parts['fuel can'].openings.ring.height = '3/8 in'
    after.parts['fuel can'].openings.ring.hole = { bit: '#7' }
    after.parts['fuel can'].openings.floor.layout.hexagonal.margin = '1/2 in'
    after.fuel.kind = 'twigs'
    const lines = (length: (length: number) => string): readonly string[] =>
      stoveDifference(file('redshank'), after as StoveFile, {
        length,
        fuel: (key) => key.replace('-', ' '),
      }).map(differenceLine)
    expect(lines((length) => `${(1000 * length).toFixed(1)} mm`)).toEqual([
      'fuel can, floor: margin 0.7 mm wider: 12.0 mm → 12.7 mm',
      'fuel can, ring: 7.0 mm → #7, 5.1 mm',
      'fuel can, ring: 6.5 mm higher: 16.0 mm → 9.5 mm',
      'fuel: wood chips → twigs',
    ])
    expect(lines((length) => `${(length / 0.0254).toFixed(2)} in`)).toEqual([
      'fuel can, floor: margin 0.03 in wider: 0.47 in → 0.50 in',
      'fuel can, ring: 0.28 in → #7, 0.20 in',
      'fuel can, ring: 0.25 in higher: 0.63 in → 0.38 in',
      'fuel: wood chips → twigs',
    ])
  })

  it('tells the same things backwards with the words turned round', () => {
    const after = structuredClone(file('redshank')) as Loose
    after.parts['fuel can'].openings.ring.height = '10 mm'
    after.parts.shell.openings.intake.count = 14
    expect(stoveDifference(after as StoveFile, file('redshank')).map(differenceLine)).toEqual([
      'shell, intake: 14 → 12 holes',
      'fuel can, ring: 6 mm (15/64 in) lower: 10 mm (25/64 in) → 16 mm (5/8 in)',
    ])
  })

  it('finds its way from one stove to quite another', () => {
    const lines = stoveDifference(file('redshank'), file('greylag')).map(differenceLine)
    expect(lines).toContain('lid ring: new: a lid ring')
    expect(lines).toContain('fuel can: another can: 307x409 → 502x608')
    expect(lines.every((line) => !line.includes('undefined'))).toBe(true)
  })

  it('points at the opening of the newer stove', () => {
    const after = structuredClone(file('redshank')) as Loose
    after.parts.shell.openings.intake.count = 14
    expect(stoveDifference(file('redshank'), after as StoveFile)).toMatchObject([
      { part: 'shell', opening: 'intake' },
    ])
  })
})
