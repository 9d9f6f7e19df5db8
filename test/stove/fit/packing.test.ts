import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BadInput } from '#basis/problem.ts'
import { degrees, fromMillimetres as mm, toMillimetres } from '#basis/units.ts'
import { canFromCode, measuredCan } from '#stove/can/fromCode.ts'
import { canMass } from '#stove/can/mass.ts'
import type { Bundle } from '#stove/fit/bundle.ts'
import { smallestBundle } from '#stove/fit/packing.ts'
import type { BandPart, Can, DiscPart, Opening, Part, Placement } from '#stove/model.ts'
import { canPart, cup, measured } from './sampleCans.ts'

const pack = (parts: Record<string, Part>, assembly: readonly Placement[] = []): Bundle =>
  smallestBundle(new Map(Object.entries(parts)), assembly)

const cups = (cans: Record<string, Can>): Record<string, Part> =>
  Object.fromEntries(Object.entries(cans).map(([name, can]) => [name, canPart(can)]))

const disc = (across: number, thickness: number, openings: Record<string, Opening> = {}): DiscPart => ({
  form: 'disc',
  role: 'concentrator',
  diameter: measured(across),
  thickness: mm(thickness),
  openings: new Map(Object.entries(openings)),
})

const bore = (across: number): Opening => ({
  kind: 'bore',
  duty: 'passage',
  face: 'face',
  diameter: mm(across),
})

const band = (height: number, thickness = 0.2): BandPart => ({
  form: 'band',
  role: 'damper',
  height: mm(height),
  thickness: mm(thickness),
  openings: new Map(),
})

const on = (part: string, host: string): Placement => ({
  part,
  place: 'slips over',
  host,
  raised: mm(0),
  turned: degrees(0),
})

const size = ({ diameter, height }: Bundle) =>
  [toMillimetres(diameter), toMillimetres(height)].map((length) => Number(length.toFixed(6)))

/** A closed can that nothing goes into. */
const closed = (across: number, height: number): Can => cup(across, height, 0.2, { top: { kind: 'drawn' } })

describe('packing by hand', () => {
  test('one can is its own bundle', () => {
    const bundle = pack(cups({ shell: cup(100, 120) }))
    expect(size(bundle)).toEqual([100, 120])
    expect(bundle.steps).toEqual([
      { part: 'shell', wayUp: 'as it stands', base: 0, inside: null, restsOn: null },
    ])
    expect(bundle.rattles).toEqual([])
    // π/4 × 100² × 120 mm³ = 942.478 mL
    expect(bundle.volume * 1e6).toBeCloseTo(942.478, 3)
  })

  test('a shorter cup disappears in a wider one', () => {
    // inner stands on the floor, 0.2 + 90 = 90.2 < 100
    expect(size(pack(cups({ shell: cup(100, 100), 'fuel can': cup(80, 90) })))).toEqual([100, 100])
  })

  test('a taller cup stands out by its height less the wider one’s, and one floor', () => {
    // 0.2 + 120 = 120.2
    expect(size(pack(cups({ shell: cup(100, 100), 'fuel can': cup(80, 120) })))).toEqual([100, 120.2])
  })

  test('three cups nest one floor above another', () => {
    // floors at 0, 0.2, 0.4: 0.4 + 100 = 100.4
    const bundle = pack(cups({ small: cup(60, 100), large: cup(100, 100), middle: cup(80, 100) }))
    expect(size(bundle)).toEqual([100, 100.4])
    expect(bundle.steps.map(({ part }) => part)).toEqual(['large', 'middle', 'small'])
  })

  test('two cups of one size only stack', () => {
    expect(size(pack(cups({ one: cup(100, 80), other: cup(100, 80) })))).toEqual([100, 160])
  })

  test('a tube with both ends cut goes round anything that fits, for nothing', () => {
    const tube = cup(100, 100, 0.2, { bottom: { kind: 'cut' } })
    expect(size(pack(cups({ tube, can: closed(99, 100) })))).toEqual([100, 100])
    // 99.7 does not go through 100 − 0.4 = 99.6: on top of one another.
    expect(size(pack(cups({ tube, can: closed(99.7, 100) })))).toEqual([100, 200])
  })

  test('a can closed at both ends takes nothing in, but a narrower one stands in the recess of its end', () => {
    // Plain ends lie 3 mm inside the edge: 100 + (80 − 3) = 177. The panel is 0.2 mm thick below that.
    const end = { kind: 'plain', countersink: mm(3) } as const
    const sealed = measuredCan({
      seamDiameter: measured(103),
      bodyDiameter: measured(100),
      height: measured(100),
      bodyWall: mm(0.2),
      bottom: end,
      top: end,
    })
    expect(size(pack(cups({ sealed, small: closed(60, 80) })))).toEqual([103, 177])
    // 99.7 is wider than the recess, 100 − 0.4 = 99.6: on the rim.
    expect(size(pack(cups({ sealed, wide: closed(99.7, 80) })))).toEqual([103, 180])
  })

  test('a ledge keeps out what is wider than its opening, whatever the room behind it', () => {
    const ledged = (opening: number): Can =>
      measuredCan({
        seamDiameter: measured(103),
        bodyDiameter: measured(100),
        height: measured(100),
        bodyWall: mm(0.2),
        endWall: mm(0.2),
        bottom: { kind: 'plain', countersink: mm(3) },
        top: { kind: 'pull-off', opening: measured(opening) },
      })
    // floor at 3 + 0.2 = 3.2; 3.2 + 90 = 93.2 < 100
    expect(size(pack(cups({ ledged: ledged(85), can: closed(84, 90) })))).toEqual([103, 100])
    // On the ledge it is 100 + 90; but it stands in the recess of the other end: 100 + 90 − 3.
    expect(size(pack(cups({ ledged: ledged(85), can: closed(86, 90) })))).toEqual([103, 187])
  })

  test('a tall can between two cups, one below and one over it', () => {
    // 0.2 of floor below, 150, 0.2 of floor above
    const bundle = pack(cups({ tall: closed(60, 150), shell: cup(100, 80), stand: cup(110, 80) }))
    expect(size(bundle)).toEqual([110, 150.4])
  })

  test('a cup turned over a taller one hides its own height', () => {
    // tall stands on the ground, the cup’s floor lies on it: 150 + 0.2
    const bundle = pack(cups({ tall: closed(60, 150), cover: cup(100, 140) }))
    expect(size(bundle)).toEqual([100, 150.2])
  })

  test('tolerance keeps out what might not go', () => {
    // inside 99.6 ± 0.3, outside 99 ± 0.2: 0.1 mm to spare; with ± 0.4 it may be 0.1 mm too wide.
    const inner = (tolerance: number) => cup(99, 80, 0.2, { bodyDiameter: measured(99, tolerance) })
    const outer = cup(100, 80, 0.2, { bodyDiameter: measured(100, 0.3) })
    expect(size(pack(cups({ outer, inner: inner(0.2) })))).toEqual([100.3, 80.2])
    expect(size(pack(cups({ outer, inner: inner(0.4) })))).toEqual([100.3, 160])
  })
})

describe('discs and bands', () => {
  test('a disc lies in a can', () => {
    expect(size(pack({ ...cups({ shell: cup(100, 100) }), concentrator: disc(90, 0.3) }))).toEqual([100, 100])
  })

  test('a disc wider than every can makes the bundle wider and higher by itself', () => {
    expect(size(pack({ ...cups({ shell: cup(100, 100) }), ring: disc(120, 0.3) }))).toEqual([120, 100.3])
  })

  test('a ring goes round a can that passes its bore', () => {
    const ringed = (hole: number) =>
      pack({ ...cups({ shell: cup(100, 100) }), ring: disc(120, 0.3, { bore: bore(hole) }) })
    expect(size(ringed(101))).toEqual([120, 100])
    expect(size(ringed(99))).toEqual([120, 100.3])
  })

  test('bent vanes need headroom, which is found in a can’s mouth', () => {
    // 9 mm wide, bent by 30°: 4.5 mm high, between radii of 15 and 35 mm.
    const vanes: Opening = {
      kind: 'vanes',
      duty: 'passage',
      face: 'face',
      count: 8,
      innerRadius: mm(15),
      outerRadius: mm(35),
      width: mm(9),
      angle: degrees(30),
      bend: 'up',
      hand: 'clockwise',
      bearing: degrees(0),
    }
    const vaned = disc(110, 0.3, { vanes })
    // Turned over onto the cup’s rim the vanes hang into its mouth; on a closed can they stand up.
    expect(size(pack({ ...cups({ shell: cup(100, 100) }), vaned }))).toEqual([110, 100.3])
    expect(size(pack({ ...cups({ shell: closed(100, 100) }), vaned }))).toEqual([110, 104.8])
  })

  test('a band clasped between seams that stand out further takes no room', () => {
    const shell = canFromCode('404x700', { top: { kind: 'open' } })
    const bare = pack(cups({ shell }))
    const banded = pack({ ...cups({ shell }), damper: band(30) }, [on('damper', 'shell')])
    expect(size(banded)).toEqual(size(bare))
    expect(banded.bands).toEqual([{ band: 'damper', where: 'round', can: 'shell' }])
    expect(banded.sentences[0]).toBe('Clasp the damper round the shell.')
  })

  test('round a can without seams a band would show, so it goes inside', () => {
    const bundle = pack({ ...cups({ shell: cup(100, 100) }), damper: band(30) }, [on('damper', 'shell')])
    expect(size(bundle)).toEqual([100, 100])
    expect(bundle.bands).toEqual([{ band: 'damper', where: 'inside', can: 'shell' }])
  })

  test('where a band inside would keep a can out, it goes round, twice its thickness wider', () => {
    // inside 99.6; 99.3 leaves 0.3 mm. Inside, the band’s two turns take 0.8 mm. Round: 100 + 2 × 0.2.
    const cans = cups({ shell: cup(100, 100), liner: closed(99.3, 90) })
    const bundle = pack({ ...cans, damper: band(30) }, [on('damper', 'shell')])
    // Inside, the liner would be left outside: 190 mm high.
    expect(size(bundle)).toEqual([100.4, 100])
    expect(bundle.bands[0]).toMatchObject({ where: 'round', can: 'shell' })
  })

  test('two bands share a can only if its wall is high enough for both', () => {
    // 404x307 is 87.3 mm high, 81.3 mm between its seams: two of 40 mm fit, two of 41 mm do not.
    const shell = canFromCode('404x307', { top: { kind: 'open' } })
    const two = (height: number) =>
      pack({ ...cups({ shell }), damper: band(height), spare: band(height) }, [
        on('damper', 'shell'),
        on('spare', 'shell'),
      ]).bands.map(({ where }) => where)
    expect(two(40)).toEqual(['round', 'round'])
    expect(two(41)).toEqual(['round', 'inside'])
  })

  test('a band higher than every can stands by itself as a hoop', () => {
    const bundle = pack({ ...cups({ shell: cup(100, 100) }), damper: band(120) }, [on('damper', 'shell')])
    // A hoop of the strip that goes once round the can: it goes back round it.
    expect(bundle.bands[0]?.where).toBe('alone')
    expect(size(bundle)).toEqual([100.4, 120])
  })
})

describe('what the bundle weighs', () => {
  const shell = canPart(cup(100, 100))

  test('its parts together', () => {
    const bundle = pack({ shell, plate: disc(100, 0.3), damper: band(30) }, [on('damper', 'shell')])
    // plate π/4 × 100² × 0.3 = 2356.2 mm³; band π × 100.2 × 30 × 0.2 = 1888.7 mm³; steel 7.85 g/cm³
    const rest = (7.85 * (2356.2 + 1888.7)) / 1000
    expect(bundle.mass * 1000).toBeCloseTo(canMass(shell.can) * 1000 + rest, 2)
  })

  test('less what is cut out of them', () => {
    const row: Opening = {
      kind: 'row',
      duty: 'intake',
      hole: { shape: 'round', diameter: mm(10), bit: null },
      count: 12,
      leftOut: [1, 2],
      height: mm(20),
      bearing: degrees(0),
    }
    const drilled: Part = { ...shell, openings: new Map([['intake', row]]) }
    // ten holes of 78.54 mm² in 0.2 mm tin: 157.08 mm³, 1.233 g
    expect((pack({ shell }).mass - pack({ shell: drilled }).mass) * 1000).toBeCloseTo(1.233, 3)
    // a 50 mm bore in a 0.3 mm plate: 1963.5 × 0.3 = 589.05 mm³, 4.624 g
    const bored = pack({ plate: disc(100, 0.3, { bore: bore(50) }) }).mass
    expect((pack({ plate: disc(100, 0.3) }).mass - bored) * 1000).toBeCloseTo(4.624, 3)
  })
})

describe('what rattles', () => {
  test('a can with play, by how much, and how to stop it', () => {
    // inside 99.6 − 96 = 3.6 mm; floor 0.2 + 60 leaves 39.8 of 100
    const [rattle, ...others] = pack(cups({ shell: cup(100, 100), 'fuel can': cup(96, 60) })).rattles
    expect(others).toEqual([])
    expect(toMillimetres(rattle!.sideways!)).toBeCloseTo(3.6, 9)
    expect(toMillimetres(rattle!.lengthways)).toBeCloseTo(39.8, 9)
    expect(rattle!.sentence).toBe(
      'The fuel can moves 3.6 mm (9/64 in) from side to side and 39.8 mm (1 9/16 in) up and down in the shell.',
    )
    expect(rattle!.fix).toBe(
      'Wrap the fuel can in cloth or paper about 2 mm (3/32 in) thick, and fill the 40 mm (1 9/16 in) above the fuel can with cloth, tinder or fuel.',
    )
  })

  test('a snug one does not', () => {
    // 99.6 − 99 = 0.6 mm, and it ends 0.8 mm below the rim
    expect(pack(cups({ shell: cup(100, 100), 'fuel can': cup(99, 99) })).rattles).toEqual([])
  })

  test('what stands on top with nothing round it wants a strap', () => {
    const [rattle] = pack(cups({ one: cup(100, 80), other: cup(100, 80) })).rattles
    expect(rattle).toMatchObject({
      sideways: null,
      sentence: 'The other stands on the one with nothing round it to hold it.',
    })
  })
})

describe('the steps', () => {
  test('a whole stove, said in order', () => {
    const parts = {
      ...cups({
        shell: canFromCode('603x700', { top: { kind: 'open' } }),
        'fuel can': canFromCode('404x414', { top: { kind: 'open' } }),
        'pot stand': canFromCode('401x206', { bottom: { kind: 'open' }, top: { kind: 'open' } }),
      }),
      concentrator: disc(100, 0.3, { bore: bore(50) }),
      damper: band(30),
    }
    const bundle = pack(parts, [on('damper', 'shell')])
    // Everything goes into the shell: its seam, at its widest, and its height are the bundle.
    expect(size(bundle)).toEqual([157.6625, 177.8])
    expect(bundle.sentences[0]).toBe('Clasp the damper round the shell.')
    expect(bundle.sentences[1]).toBe('Stand the shell, right way up, on the table.')
    expect(bundle.steps.map(({ part }) => part).toSorted()).toEqual([
      'concentrator',
      'fuel can',
      'pot stand',
      'shell',
    ])
    for (const { part, inside } of bundle.steps) expect(inside === null).toBe(part === 'shell')
  })

  test('a can that stands mouth down is put over what it covers', () => {
    const cover = cup(100, 140, 0.2, { bottom: { kind: 'cut' }, top: { kind: 'drawn' } })
    expect(pack(cups({ 'fuel can': closed(60, 150), cover })).sentences).toEqual([
      'Stand the fuel can, right way up, on the table.',
      'Put the cover, right way up, over the fuel can.',
    ])
  })

  test('refuses no parts and more than it can look through', () => {
    expect(() => pack({})).toThrow(BadInput)
    const many = Object.fromEntries(Array.from({ length: 13 }, (_, index) => [`can ${index}`, cup(100, 80)]))
    expect(() => pack(cups(many))).toThrow(/1 to 12 parts/)
  })
})

describe('any bundle', () => {
  const anyCup = fc
    .record({
      across: fc.integer({ min: 50, max: 120 }),
      height: fc.integer({ min: 30, max: 150 }),
      ends: fc.constantFrom('cup', 'tube', 'closed', 'turned'),
    })
    .map(({ across, height, ends }) =>
      cup(across, height, 0.2, {
        bottom: { kind: ends === 'tube' || ends === 'turned' ? 'cut' : 'drawn' },
        top: { kind: ends === 'closed' || ends === 'turned' ? 'drawn' : 'cut' },
      }),
    )
  const anyKit = fc.array(anyCup, { minLength: 1, maxLength: 6 })
  const named = (cans: readonly Can[]) =>
    cups(Object.fromEntries(cans.map((can, index) => [`can ${index}`, can])))

  test('is as wide as its widest and at least as tall as its tallest part, never taller than all stacked', () => {
    fc.assert(
      fc.property(anyKit, (cans) => {
        const bundle = pack(named(cans))
        const heights = cans.map(({ height }) => height.value as number)
        expect(bundle.diameter).toBeCloseTo(
          Math.max(...cans.map(({ bodyDiameter }) => bodyDiameter.value)),
          12,
        )
        expect(bundle.height).toBeGreaterThanOrEqual(Math.max(...heights) - 1e-9)
        expect(bundle.height).toBeLessThanOrEqual(heights.reduce((sum, height) => sum + height) + 1e-9)
      }),
    )
  })

  test('does not depend on the order of the parts', () => {
    fc.assert(
      fc.property(anyKit, (cans) => {
        expect(pack(named(cans.toReversed())).height).toBeCloseTo(pack(named(cans)).height, 9)
      }),
    )
  })

  test('does not get smaller by one more part, nor heavier than its parts', () => {
    fc.assert(
      fc.property(anyKit, anyCup, (cans, more) => {
        const [before, after] = [pack(named(cans)), pack(named([...cans, more]))]
        expect(after.height).toBeGreaterThanOrEqual(before.height - 1e-9)
        expect(after.volume).toBeGreaterThanOrEqual(before.volume - 1e-12)
        expect(after.mass).toBeCloseTo(before.mass + canMass(more), 9)
      }),
    )
  })

  test('turned over as a whole is as small', () => {
    fc.assert(
      fc.property(anyKit, (cans) => {
        const turned = cans.map((can) => ({ ...can, top: can.bottom, bottom: can.top }))
        expect(pack(named(turned)).height).toBeCloseTo(pack(named(cans)).height, 9)
      }),
    )
  })
})
