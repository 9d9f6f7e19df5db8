import { degrees, metres, fromMillimetres as mm } from '#basis/units.ts'
import type { Can, CanEnd, CanPart, DiscPart, Opening, Part, Placement, Stove } from '#stove/model.ts'

/** Small stoves for the tests, in millimetres, without a stove file. Invented. */
export const can = (body: number, height: number, bottom: CanEnd, top: CanEnd, seam = body + 2.6): Can => ({
  code: null,
  seamDiameter: { value: mm(seam), tolerance: mm(0.3) },
  bodyDiameter: { value: mm(body), tolerance: mm(0.3) },
  height: { value: mm(height), tolerance: mm(0.5) },
  bodyWall: mm(0.2),
  endWall: mm(0.22),
  bottom,
  top,
  seamHeight: mm(3),
  beads: [],
  sideSeam: null,
})

export const plain: CanEnd = { kind: 'plain', countersink: mm(3.2) }
export const open: CanEnd = { kind: 'open' }
export const cut: CanEnd = { kind: 'cut' }
export const ring = (opening: number): CanEnd => ({
  kind: 'friction',
  opening: { value: mm(opening), tolerance: mm(0.3) },
})

export const row = (
  duty: Opening['duty'],
  count: number,
  diameter: number,
  height: number,
  bearing = 0,
): Extract<Opening, { kind: 'row' }> => ({
  kind: 'row',
  duty,
  hole: { shape: 'round', diameter: mm(diameter), bit: null },
  count,
  leftOut: [],
  height: mm(height),
  bearing: degrees(bearing),
})

export const floorHoles = (count: number, diameter: number, fill: number): Opening => ({
  kind: 'pattern',
  duty: 'primary',
  face: 'bottom',
  layout: 'sunflower',
  diameter: mm(diameter),
  bit: null,
  holes: Array.from({ length: count }, (_, i) => ({
    radius: mm(fill * Math.sqrt((i + 0.5) / count)),
    bearing: degrees((i * 137.508) % 360),
  })),
})

export const bore = (diameter: number): Opening => ({
  kind: 'bore',
  duty: 'passage',
  face: 'face',
  diameter: mm(diameter),
})

export const canPart = (role: CanPart['role'], of: Can, openings: Record<string, Opening> = {}): CanPart => ({
  form: 'can',
  role,
  can: of,
  openings: new Map(Object.entries(openings)),
})

export const disc = (diameter: number, openings: Record<string, Opening>): DiscPart => ({
  form: 'disc',
  role: 'concentrator',
  diameter: { value: mm(diameter), tolerance: mm(0.3) },
  thickness: mm(0.25),
  openings: new Map(Object.entries(openings)),
})

export const place = (
  part: string,
  where: Placement['place'],
  host: string | null = null,
  raised = 0,
): Placement => ({ part, place: where, host, raised: mm(raised), turned: degrees(0) })

export interface TwoWall {
  readonly intake?: Opening
  readonly floor?: Opening
  readonly secondary?: Opening
  readonly bore?: number
  readonly level?: number
  readonly fuel?: string
  readonly windows?: Opening
  readonly standHeight?: number
}

/** A two-wall stove with a pot stand and a plain bore. */
export const twoWall = (with_: TwoWall = {}): Stove => ({
  name: 'test stove',
  about: 'invented for the tests',
  parts: new Map<string, Part>([
    [
      'shell',
      canPart('shell', can(112, 140, plain, ring(92)), { intake: with_.intake ?? row('intake', 10, 12, 22) }),
    ],
    [
      'fuel can',
      canPart('fuel can', can(90.5, 118, plain, open, 93.5), {
        floor: with_.floor ?? floorHoles(37, 4, 38),
        secondary: with_.secondary ?? row('secondary', 20, 6, 104),
      }),
    ],
    ['concentrator', disc(104, { bore: bore(with_.bore ?? 44) })],
    [
      'stand',
      canPart('pot stand', can(99, with_.standHeight ?? 70, open, open), {
        tertiary: row('tertiary', 12, 6, 10),
        windows: with_.windows ?? row('outlet', 10, 18, (with_.standHeight ?? 70) - 16),
      }),
    ],
  ]),
  assembly: [
    place('shell', 'on ground'),
    place('fuel can', 'hangs in', 'shell'),
    place('concentrator', 'sits on', 'shell'),
    place('stand', 'sits on', 'concentrator'),
  ],
  fuel: { kind: with_.fuel ?? 'pellets-6mm', moisture: null, level: mm(with_.level ?? 65) },
  potDiameter: metres(0.16),
})

/** A single-wall stove with a chimney riser, raised on feet, burning in open air below. */
export const riserStove = (riserHeight = 180): Stove => ({
  name: 'test riser stove',
  about: 'invented for the tests',
  parts: new Map<string, Part>([
    [
      'fuel can',
      canPart('fuel can', can(99, 119, plain, open), {
        floor: floorHoles(45, 4, 40),
        secondary: row('secondary', 18, 6, 100),
      }),
    ],
    ['concentrator', disc(106, { bore: bore(50) })],
    ['riser', canPart('riser', can(73, riserHeight, open, open))],
  ]),
  assembly: [
    place('fuel can', 'on ground', null, 15),
    place('concentrator', 'sits on', 'fuel can'),
    place('riser', 'sits on', 'concentrator'),
  ],
  fuel: { kind: 'wood-chips', moisture: null, level: mm(75) },
  potDiameter: null,
})
