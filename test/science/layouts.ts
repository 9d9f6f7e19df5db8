import { degrees, metres, fromMillimetres as mm } from '#basis/units.ts'
import type { BandPart, CanPart, DiscPart, Opening, Part, Placement, Stove, WallHole } from '#stove/model.ts'
import {
  bore,
  can,
  canPart,
  cut,
  disc,
  floorHoles,
  open,
  place,
  plain,
  ring,
  riserStove,
  row,
  twoWall,
} from './stoves.ts'

/** Every layout of the trade that the stove file names, as a small stove. Invented for the tests. */

/** The stove with some parts replaced, added (undefined leaves out) and, where given, put together another way. */
export const changed = (
  stove: Stove,
  parts: Readonly<Record<string, Part | undefined>>,
  assembly: readonly Placement[] = stove.assembly,
): Stove => {
  const merged = new Map(stove.parts)
  for (const [name, part] of Object.entries(parts)) {
    if (part === undefined) merged.delete(name)
    else merged.set(name, part)
  }
  return { ...stove, parts: merged, assembly }
}

export const rowOf = (
  duty: Opening['duty'],
  count: number,
  hole: WallHole,
  height: number,
  more: { readonly leftOut?: readonly number[]; readonly bearing?: number } = {},
): Extract<Opening, { kind: 'row' }> => ({
  kind: 'row',
  duty,
  hole,
  count,
  leftOut: more.leftOut ?? [],
  height: mm(height),
  bearing: degrees(more.bearing ?? 0),
})

export const round = (diameter: number): WallHole => ({ shape: 'round', diameter: mm(diameter), bit: null })
const window = (width: number, height: number, foot: 'square' | 'round' = 'round'): WallHole => ({
  shape: 'window',
  width: mm(width),
  height: mm(height),
  foot,
  bit: null,
})
const slit = (length: number, width: number, along: 'axis' | 'round'): WallHole => ({
  shape: 'slit',
  length: mm(length),
  width: mm(width),
  along,
})

const vanes = (angle: number, count = 10): Opening => ({
  kind: 'vanes',
  duty: 'passage',
  face: 'face',
  count,
  innerRadius: mm(12),
  outerRadius: mm(36),
  width: mm(9),
  angle: degrees(angle),
  bend: 'up',
  hand: 'clockwise',
  bearing: degrees(0),
})

export const band = (height: number, openings: Record<string, Opening>): BandPart => ({
  form: 'band',
  role: 'damper',
  height: mm(height),
  thickness: mm(0.2),
  openings: new Map(Object.entries(openings)),
})

/** The damper of a two-wall stove: windows as wide as the intake holes, turned by an angle. */
export const dampered = (turned: number, stove: Stove = twoWall()): Stove =>
  changed(stove, { damper: band(30, { windows: row('intake', 10, 12, 15) }) }, [
    ...stove.assembly,
    { ...place('damper', 'slips over', 'shell', 7), turned: degrees(turned) },
  ])

const lidRing = (diameter: number, hole: number): DiscPart => ({
  ...disc(diameter, { hole: bore(hole) }),
  role: 'lid ring',
})

const grate = (diameter: number, holes: number): DiscPart => ({
  ...disc(diameter, { holes: { ...floorHoles(holes, 5, diameter * 0.42), face: 'face' } as Opening }),
  role: 'grate',
})

const shellOf = (openings: Record<string, Opening>, top = ring(92)): CanPart =>
  canPart('shell', can(112, 140, plain, top), openings)
const intake = row('intake', 10, 12, 22)

export const layouts: Readonly<Record<string, () => Stove>> = {
  'two walls with a pot stand': () => twoWall(),
  'two walls without a pot stand': () =>
    changed(twoWall(), { stand: undefined }, twoWall().assembly.slice(0, 3)),
  'two walls, nothing over the fuel can': () =>
    changed(twoWall(), { stand: undefined, concentrator: undefined }, twoWall().assembly.slice(0, 2)),
  'single wall with a chimney riser': () => riserStove(),
  'with a damper half shut': () => dampered(9),
  'concentrator of slits bent to vanes': () =>
    changed(twoWall(), { concentrator: disc(104, { vanes: vanes(35) }) }),
  'concentrator with a bore and vanes': () =>
    changed(twoWall(), { concentrator: disc(104, { bore: bore(20), vanes: vanes(30) }) }),
  'lid ring that holds the fuel can, concentrator on the ring': () =>
    changed(twoWall(), { shell: shellOf({ intake }, open), 'lid ring': lidRing(112, 92) }, [
      place('shell', 'on ground'),
      place('lid ring', 'sits on', 'shell'),
      place('fuel can', 'hangs in', 'lid ring'),
      place('concentrator', 'sits on', 'lid ring'),
      place('stand', 'sits on', 'concentrator'),
    ]),
  'open floor with a raised grate': () =>
    changed(
      twoWall(),
      {
        'fuel can': canPart('fuel can', can(90.5, 118, open, open, 93.5), {
          secondary: row('secondary', 20, 6, 104),
        }),
        grate: grate(88, 40),
      },
      [...twoWall().assembly, place('grate', 'stands in', 'fuel can', 12)],
    ),
  'perforated floor with a raised grate over it': () =>
    changed(twoWall(), { grate: grate(88, 40) }, [
      ...twoWall().assembly,
      place('grate', 'stands in', 'fuel can', 10),
    ]),
  'intake with a hole left out on the wind side': () =>
    twoWall({ intake: rowOf('intake', 10, round(12), 22, { leftOut: [3] }) }),
  'two intake rows and two secondary rows': () =>
    changed(twoWall(), {
      shell: shellOf({ low: row('intake', 10, 8, 15), high: row('intake', 10, 8, 32, 18) }),
      'fuel can': canPart('fuel can', can(90.5, 118, plain, open, 93.5), {
        floor: floorHoles(37, 4, 38),
        lower: row('secondary', 12, 5, 92),
        upper: row('secondary', 16, 6, 106),
      }),
    }),
  'primary rows in the wall beside the fuel': () =>
    changed(twoWall(), {
      'fuel can': canPart('fuel can', can(90.5, 118, plain, open, 93.5), {
        floor: floorHoles(37, 4, 38),
        side: row('primary', 12, 3, 20),
        secondary: row('secondary', 20, 6, 104),
      }),
    }),
  'primary rows in the wall and a whole floor': () =>
    changed(twoWall(), {
      'fuel can': canPart('fuel can', can(90.5, 118, plain, open, 93.5), {
        side: row('primary', 24, 4, 8),
        secondary: row('secondary', 20, 6, 104),
      }),
    }),
  'square-topped windows': () => twoWall({ intake: rowOf('intake', 8, window(12, 15), 22) }),
  'square windows': () => twoWall({ intake: rowOf('intake', 8, window(12, 15, 'square'), 22) }),
  'slits along the axis': () => twoWall({ secondary: rowOf('secondary', 20, slit(18, 2, 'axis'), 102) }),
  'slits round the wall': () => twoWall({ secondary: rowOf('secondary', 10, slit(18, 2, 'round'), 104) }),
  'open gap at the top, no ring': () =>
    changed(twoWall(), { shell: shellOf({ intake }, open) }, [
      place('shell', 'on ground'),
      place('fuel can', 'stands in', 'shell', 19),
      place('concentrator', 'sits on', 'fuel can'),
      place('stand', 'sits on', 'concentrator'),
    ]),
  'concentrator on the fuel can inside the stand': () =>
    changed(twoWall(), { concentrator: disc(93, { bore: bore(44) }) }, [
      place('shell', 'on ground'),
      place('fuel can', 'hangs in', 'shell', 6),
      place('concentrator', 'sits on', 'fuel can'),
      place('stand', 'sits on', 'shell'),
    ]),
  'stand wider than the shell': () =>
    changed(twoWall(), {
      stand: canPart('pot stand', can(130, 70, open, open), { windows: row('outlet', 10, 18, 54) }),
    }),
  'stand that slips over the shell': () =>
    changed(
      twoWall(),
      { stand: canPart('pot stand', can(116, 90, cut, open), { windows: row('outlet', 10, 18, 74) }) },
      [...twoWall().assembly.slice(0, 3), place('stand', 'slips over', 'shell', 125)],
    ),
  'two walls raised on feet, air from below': () =>
    changed(twoWall(), { shell: canPart('shell', can(112, 140, open, ring(92)), {}) }, [
      place('shell', 'on ground', null, 20),
      ...twoWall().assembly.slice(1),
    ]),
  'a pot on the windows of the stand': () => ({ ...twoWall(), potDiameter: metres(0.2) }),
  'two walls with a chimney riser': () =>
    changed(twoWall(), { stand: undefined, riser: canPart('riser', can(73, 150, open, open)) }, [
      ...twoWall().assembly.slice(0, 3),
      place('riser', 'sits on', 'concentrator'),
    ]),
  'riser with a row of tertiary holes': () =>
    changed(riserStove(), {
      riser: canPart('riser', can(73, 180, open, open), { tertiary: row('tertiary', 12, 5, 12) }),
    }),
  'concentrator of thick plate': () =>
    changed(twoWall(), { concentrator: { ...disc(104, { bore: bore(44) }), thickness: mm(1.5) } }),
}
