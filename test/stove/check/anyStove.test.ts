import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkStove } from '#stove/check/checkStove.ts'
import type { CanEnd, Duty, Opening, PlaceKind } from '#stove/model.ts'
import {
  band,
  bore,
  canPart,
  discPart,
  place,
  plain,
  pullOff,
  rings,
  round,
  row,
  shelf,
  slit,
  stove,
  vanes,
  window,
} from './stoves.ts'

const millimetres = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const duty = fc.constantFrom<Duty>(
  'intake',
  'primary',
  'secondary',
  'tertiary',
  'outlet',
  'passage',
  'fixing',
)

const hole = fc.oneof(
  millimetres(0.5, 40).map(round),
  fc.tuple(millimetres(2, 40), millimetres(20, 60)).map(([w, h]) => window(w, h, 'round')),
  fc.tuple(millimetres(2, 40), millimetres(2, 60)).map(([w, h]) => window(w, h)),
  fc
    .tuple(millimetres(2, 40), millimetres(0.5, 5), fc.boolean())
    .map(([l, w, up]) => slit(l, w, up ? 'axis' : 'round')),
)
const anyRow = fc
  .tuple(duty, fc.integer({ min: 1, max: 50 }), hole, millimetres(-10, 220), millimetres(0, 360))
  .map(([what, count, shape, height, bearing]): Opening => row(what, count, shape, height, { bearing }))

const inFace = (face: 'bottom' | 'top' | 'face') =>
  fc.oneof(
    fc
      .tuple(duty, millimetres(0.5, 15), millimetres(0, 80), fc.integer({ min: 1, max: 30 }))
      .map(([what, size, radius, count]): Opening => rings(what, size, [[radius, count]], face)),
    fc.tuple(duty, millimetres(1, 160)).map(([what, size]): Opening => bore(size, face, what)),
    fc
      .tuple(
        fc.integer({ min: 1, max: 16 }),
        millimetres(1, 40),
        millimetres(41, 80),
        millimetres(1, 20),
        fc.constantFrom('up', 'down'),
      )
      .map(
        ([count, inner, outer, width, bend]): Opening => vanes(count, inner, outer, width, { face, bend }),
      ),
  )

const end = fc.oneof(
  fc.constantFrom<CanEnd>(plain, { kind: 'drawn' }, { kind: 'open' }, { kind: 'cut' }),
  millimetres(20, 140).map((opening) => pullOff(opening, 0.5)),
)
const openings = (what: fc.Arbitrary<Opening>) =>
  fc.dictionary(fc.constantFrom('a', 'b', 'c'), what, { maxKeys: 3 })
const anyCan = fc
  .record({
    body: millimetres(40, 170),
    height: millimetres(40, 220),
    tolerance: millimetres(0, 1),
    bottom: end,
    top: end,
    sideSeam: fc.option(millimetres(0, 360)),
    openings: openings(fc.oneof(anyRow, inFace('bottom'), inFace('top'))),
  })
  .map(({ openings: cut, ...spec }) => ({ spec: { ...spec, beads: [[20, 25]] as const }, cut }))
const kind = fc.constantFrom<PlaceKind>('stands in', 'hangs in', 'sits on', 'slips over', 'slips into')

const anyStove = fc
  .record({
    shell: anyCan,
    fuel: anyCan,
    stand: anyCan,
    disc: fc.tuple(millimetres(30, 180), openings(inFace('face'))),
    damper: fc.tuple(millimetres(5, 60), openings(anyRow)),
    kinds: fc.tuple(kind, kind, kind),
    raised: millimetres(0, 30),
    fuelLevel: millimetres(1, 200),
    pot: fc.option(millimetres(40, 250)),
  })
  .map(({ shell, fuel, stand, disc, damper, kinds, raised, ...more }) =>
    stove(
      {
        shell: canPart('shell', shell.spec, shell.cut),
        fuel: canPart('fuel can', fuel.spec, fuel.cut),
        disc: discPart('concentrator', disc[0], disc[1], 0.5),
        stand: canPart('pot stand', stand.spec, stand.cut),
        damper: band(damper[0], damper[1]),
      },
      [
        place('shell', 'on ground'),
        place('fuel', kinds[0], 'shell', { raised }),
        place('disc', kinds[1], 'fuel'),
        place('stand', kinds[2], 'shell'),
        place('damper', 'slips over', 'shell', { raised }),
      ],
      more,
    ),
  )

test('whatever the stove, the checks answer in figures and never the same thing twice', () => {
  fc.assert(
    fc.property(anyStove, fc.boolean(), (what, owned) => {
      const found = checkStove(what, owned ? shelf(3, 6, 10, 16) : null)
      for (const { sentence, fix } of found) {
        expect(`${sentence} ${fix}`).not.toMatch(/NaN|Infinity|undefined|null|-\d|\[object/)
        expect(sentence).toMatch(/^[A-Z“0-9].*[^.]\.$/)
        expect(fix).toMatch(/^[A-Z“0-9].*[^.]\.$/)
      }
      expect(new Set(found.map((finding) => JSON.stringify(finding))).size).toBe(found.length)
    }),
    { numRuns: 300 },
  )
})
