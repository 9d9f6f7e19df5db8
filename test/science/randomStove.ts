import type { RandomStream } from '#basis/random.ts'
import { degrees, fraction, metres, fromMillimetres as mm } from '#basis/units.ts'
import { fuelTable } from '#science/fuel/table.ts'
import type { Site } from '#science/site.ts'
import { calm, type Wind } from '#science/weather/wind.ts'
import type {
  BandPart,
  Can,
  CanEnd,
  CanPart,
  DiscPart,
  Opening,
  Part,
  Placement,
  Stove,
  WallHole,
} from '#stove/model.ts'
import { can, canPart, cut, open, place, plain, ring } from './stoves.ts'

/** A stove, its fuel as it comes and the day it burns on. Lengths inside this file in millimetres. */
export interface RandomCase {
  readonly stove: Stove
  /** Wet basis [1]. */
  readonly moisture: number
  readonly site: Site
}

type Row = Extract<Opening, { kind: 'row' }>

const chance = (stream: RandomStream, share: number): boolean => stream.uniform() < share
const whole = (stream: RandomStream, low: number, high: number): number =>
  low + stream.integer(high - low + 1)

const holeOf = (stream: RandomStream, tallest: number): WallHole => {
  const shape = stream.pick(['round', 'round', 'round', 'window', 'slit'] as const)
  if (shape === 'round') return { shape, diameter: mm(stream.between(2.5, Math.min(14, tallest))), bit: null }
  if (shape === 'window') {
    const height = stream.between(4, Math.min(18, tallest))
    return {
      shape,
      width: mm(height * stream.between(0.5, 1)),
      height: mm(height),
      foot: stream.pick(['square', 'round']),
      bit: null,
    }
  }
  const along = stream.pick(['axis', 'round'] as const)
  return {
    shape,
    length: mm(stream.between(5, along === 'axis' ? Math.min(20, tallest) : 20)),
    width: mm(stream.between(1.2, 3)),
    along,
  }
}

const reach = (hole: WallHole): { readonly round: number; readonly axial: number } => {
  if (hole.shape === 'round') return { round: hole.diameter * 1000, axial: hole.diameter * 1000 }
  if (hole.shape === 'window') return { round: hole.width * 1000, axial: hole.height * 1000 }
  return hole.along === 'axis'
    ? { round: hole.width * 1000, axial: hole.length * 1000 }
    : { round: hole.length * 1000, axial: hole.width * 1000 }
}

/** A row that fits on a wall between two heights: tin is left between neighbours and to the edges. */
const rowIn = (
  stream: RandomStream,
  duty: Opening['duty'],
  body: number,
  from: number,
  to: number,
): Row | null => {
  if (to - from < 4) return null
  const hole = holeOf(stream, to - from - 1)
  const { round, axial } = reach(hole)
  if (axial > to - from) return null
  const most = Math.floor((Math.PI * body) / (1.3 * round))
  if (most < 2) return null
  const count = whole(stream, 2, Math.min(40, most))
  const leftOut = chance(stream, 0.2) ? [whole(stream, 1, count)] : []
  return {
    kind: 'row',
    duty,
    hole,
    count,
    leftOut,
    height: mm(stream.between(from + axial / 2, to - axial / 2)),
    bearing: degrees(stream.between(0, 360)),
  }
}

const patternIn = (stream: RandomStream, face: 'bottom' | 'face', fill: number): Opening => {
  const diameter = stream.between(2, 8)
  const most = Math.floor((0.5 * fill * fill) / (diameter * diameter))
  const count = whole(stream, 3, Math.max(4, Math.min(120, most)))
  return {
    kind: 'pattern',
    duty: 'primary',
    face,
    layout: 'sunflower',
    diameter: mm(diameter),
    bit: null,
    holes: Array.from({ length: count }, (_, i) => ({
      radius: mm(fill * Math.sqrt((i + 0.5) / count)),
      bearing: degrees((i * 137.508) % 360),
    })),
  }
}

const flatDisc = (
  role: DiscPart['role'],
  diameter: number,
  thickness: number,
  openings: Record<string, Opening>,
): DiscPart => ({
  form: 'disc',
  role,
  diameter: { value: mm(diameter), tolerance: mm(0.3) },
  thickness: mm(thickness),
  openings: new Map(Object.entries(openings)),
})

/** The disc over the fuel can; its openings stay within `free`, the radius of what lies under it. */
const concentratorOf = (stream: RandomStream, diameter: number, free: number): DiscPart => {
  const kind = stream.pick(['bore', 'bore', 'vanes', 'both'] as const)
  const bore =
    kind === 'vanes' ? 0 : free * (kind === 'both' ? stream.between(0.2, 0.4) : stream.between(0.5, 1.5)) * 2
  const openings: Record<string, Opening> = {}
  if (bore > 0)
    openings.bore = { kind: 'bore', duty: 'passage', face: 'face', diameter: mm(Math.min(bore, 1.8 * free)) }
  if (kind !== 'bore') {
    const inner = Math.max(6, bore / 2 + 3)
    const outer = free * 0.92
    const width = stream.between(3, 8)
    const most = Math.floor((2 * Math.PI * inner) / (width + 1))
    if (outer - inner > 5 && most >= 3)
      openings.vanes = {
        kind: 'vanes',
        duty: 'passage',
        face: 'face',
        count: whole(stream, 3, Math.min(16, most)),
        innerRadius: mm(inner),
        outerRadius: mm(outer),
        width: mm(width),
        angle: degrees(stream.between(10, 80)),
        bend: stream.pick(['up', 'down']),
        hand: stream.pick(['clockwise', 'anticlockwise']),
        bearing: degrees(0),
      }
    else openings.bore = { kind: 'bore', duty: 'passage', face: 'face', diameter: mm(free) }
  }
  return flatDisc('concentrator', diameter, stream.between(0.15, 1.2), openings)
}

/** A band with windows like the row's own holes, turned by a random angle. */
const damperOver = (stream: RandomStream, row: Row): { band: BandPart; placement: Placement } => {
  const { axial } = reach(row.hole)
  const height = axial + 8
  return {
    band: {
      form: 'band',
      role: 'damper',
      height: mm(height),
      thickness: mm(0.2),
      openings: new Map([['windows', { ...row, leftOut: [], height: mm(height / 2) }]]),
    },
    placement: {
      ...place('damper', 'slips over', 'shell', row.height * 1000 - height / 2),
      turned: degrees(stream.between(0, 360 / row.count)),
    },
  }
}

const named = (entries: readonly (readonly [string, Opening | null])[]): Record<string, Opening> =>
  Object.fromEntries(entries.filter((entry): entry is readonly [string, Opening] => entry[1] !== null))

interface FuelCan {
  readonly part: CanPart
  readonly body: number
  readonly height: number
  /** Fuel above its floor. */
  readonly level: number
  readonly extra: readonly { readonly name: string; readonly part: Part; readonly placement: Placement }[]
}

/** A can for the fuel with its floor, the rows in its wall and perhaps a grate. */
const fuelCanOf = (stream: RandomStream, body: number, height: number, seam: number): FuelCan => {
  const style = stream.pick([
    'drilled floor',
    'drilled floor',
    'grate',
    'wall rows',
    'floor and wall rows',
  ] as const)
  const bottom: CanEnd = style === 'grate' ? open : chance(stream, 0.2) ? { kind: 'drawn' } : plain
  const raisedGrate = style === 'grate' ? stream.between(4, 15) : 0
  const floor = style === 'grate' ? raisedGrate : bottom.kind === 'plain' ? 3.2 : 0
  const level = Math.max(12, (height - floor) * stream.between(0.25, 0.75))
  const hasPattern = style === 'drilled floor' || style === 'floor and wall rows'
  const hasWallRow = style === 'wall rows' || style === 'floor and wall rows'
  const openings = named([
    ['floor', hasPattern ? patternIn(stream, 'bottom', body / 2 - 6) : null],
    ['side', hasWallRow ? rowIn(stream, 'primary', body, floor + 1, floor + level * 0.9) : null],
    [
      'secondary',
      chance(stream, 0.95) ? rowIn(stream, 'secondary', body, floor + level + 2, height - 4) : null,
    ],
    [
      'second row',
      chance(stream, 0.25) ? rowIn(stream, 'secondary', body, floor + level + 2, height - 4) : null,
    ],
  ])
  const extra =
    style === 'grate'
      ? [
          {
            name: 'grate',
            part: flatDisc('grate', body - 2, 0.4, { holes: patternIn(stream, 'face', body / 2 - 6) }),
            placement: place('grate', 'stands in', 'fuel can', raisedGrate),
          },
        ]
      : []
  const top = chance(stream, 0.5) ? open : cut
  return {
    part: canPart('fuel can', can(body, height, bottom, top, seam), openings),
    body,
    height,
    level,
    extra,
  }
}

interface Top {
  readonly name: string
  readonly part: Part
  readonly placement: Placement
}

/** What stands on the concentrator, or on the can itself where there is none. */
const topsOf = (
  stream: RandomStream,
  host: string,
  body: number,
): { tops: readonly Top[]; pot: number | null } => {
  const kind = stream.pick(['stand', 'stand', 'riser', 'riser', 'nothing'] as const)
  const wide = stream.between(0.75, 1.25) * body
  if (kind === 'nothing') return { tops: [], pot: null }
  if (kind === 'riser') {
    const height = stream.between(40, 400)
    const riser = canPart(
      'riser',
      can(wide * 0.8, height, open, open),
      named([['tertiary', chance(stream, 0.3) ? rowIn(stream, 'tertiary', wide * 0.8, 3, 25) : null]]),
    )
    return { tops: [{ name: 'riser', part: riser, placement: place('riser', 'sits on', host) }], pot: null }
  }
  const height = stream.between(40, 100)
  const stand = canPart(
    'pot stand',
    can(wide, height, open, open),
    named([
      ['tertiary', chance(stream, 0.6) ? rowIn(stream, 'tertiary', wide, 3, 22) : null],
      ['windows', rowIn(stream, 'outlet', wide, height - 18, height - 2)],
    ]),
  )
  const pot = chance(stream, 0.7) ? stream.between(1.05, 1.8) * wide : null
  return { tops: [{ name: 'stand', part: stand, placement: place('stand', 'sits on', host) }], pot }
}

interface Build {
  readonly parts: Map<string, Part>
  readonly assembly: Placement[]
}

const put = ({ parts, assembly }: Build, name: string, part: Part, placement: Placement): void => {
  parts.set(name, part)
  assembly.push(placement)
}

const twoWalls = (stream: RandomStream, build: Build): { level: number; host: string; body: number } => {
  const body = stream.between(75, 190)
  const height = stream.between(90, 230)
  const inner = body - 2 * stream.between(4, 16)
  const holds = stream.pick(['ring', 'ring', 'open', 'lid ring'] as const)
  const feet = chance(stream, 0.15)
  const underneath = stream.between(8, 35)
  const fuelHeight = height - underneath
  const opening = inner + 1.2
  const shell: Can = can(body, height, feet ? open : plain, holds === 'ring' ? ring(opening) : open)
  const intake = rowIn(stream, 'intake', body, 5, Math.max(14, underneath + 25))
  const openings = named([
    ['intake', feet ? null : intake],
    ['second intake', chance(stream, 0.25) ? rowIn(stream, 'intake', body, 5, height * 0.6) : null],
  ])
  put(
    build,
    'shell',
    canPart('shell', shell, openings),
    place('shell', 'on ground', null, feet ? stream.between(8, 30) : 0),
  )
  const fuelCan = fuelCanOf(stream, inner, fuelHeight, inner + 2.8)
  if (holds === 'lid ring')
    put(
      build,
      'lid ring',
      flatDisc('lid ring', body, stream.between(0.15, 1.2), {
        hole: { kind: 'bore', duty: 'passage', face: 'face', diameter: mm(opening) },
      }),
      place('lid ring', 'sits on', 'shell'),
    )
  const placement =
    holds === 'open'
      ? place('fuel can', 'stands in', 'shell', feet ? underneath : Math.max(0, underneath - 3.2))
      : place('fuel can', 'hangs in', holds === 'ring' ? 'shell' : 'lid ring')
  put(build, 'fuel can', fuelCan.part, placement)
  for (const { name, part, placement: where } of fuelCan.extra) put(build, name, part, where)
  let host = 'shell'
  if (holds === 'lid ring') host = 'lid ring'
  if (chance(stream, 0.85)) {
    const onFuelCan = holds === 'open' || chance(stream, 0.2)
    put(
      build,
      'concentrator',
      concentratorOf(
        stream,
        onFuelCan ? inner * stream.between(1.02, 1.08) : body * stream.between(0.94, 1),
        inner / 2 - 1,
      ),
      place('concentrator', 'sits on', onFuelCan ? 'fuel can' : host),
    )
    host = 'concentrator'
  }
  if (!feet && intake !== null && chance(stream, 0.4)) {
    const { band, placement: where } = damperOver(stream, intake)
    put(build, 'damper', band, where)
  }
  return { level: fuelCan.level, host, body }
}

const singleWall = (stream: RandomStream, build: Build): { level: number; host: string; body: number } => {
  const body = stream.between(60, 170)
  const height = stream.between(80, 220)
  const fuelCan = fuelCanOf(stream, body, height, body + 2.6)
  put(
    build,
    'fuel can',
    fuelCan.part,
    place('fuel can', 'on ground', null, chance(stream, 0.85) ? stream.between(5, 40) : 0),
  )
  for (const { name, part, placement } of fuelCan.extra) put(build, name, part, placement)
  if (chance(stream, 0.85)) {
    put(
      build,
      'concentrator',
      concentratorOf(stream, body * 1.05, body / 2 - 1),
      place('concentrator', 'sits on', 'fuel can'),
    )
    return { level: fuelCan.level, host: 'concentrator', body }
  }
  return { level: fuelCan.level, host: 'fuel can', body }
}

/** A stove that could be built, with fuel and weather; nothing says that it burns. */
/** Calm half of the time, else up to a stiff breeze at the stove's own height, from anywhere. */
const randomWind = (stream: RandomStream): Wind =>
  stream.uniform() < 0.5 ? calm : { speed: stream.between(0.1, 6), from: stream.between(0, 360) }

export const randomCase = (stream: RandomStream): RandomCase => {
  const build: Build = { parts: new Map(), assembly: [] }
  const { level, host, body } = chance(stream, 0.65) ? twoWalls(stream, build) : singleWall(stream, build)
  const { tops, pot } = topsOf(stream, host, body)
  for (const { name, part, placement } of tops) put(build, name, part, placement)
  const moisture = stream.between(0, 0.3)
  return {
    stove: {
      name: 'random stove',
      about: 'drawn from a seeded stream',
      parts: build.parts,
      assembly: build.assembly,
      fuel: { kind: stream.pick([...fuelTable.keys()]), moisture: fraction(moisture), level: mm(level) },
      potDiameter: pot === null ? null : metres(pot / 1000),
    },
    moisture,
    site: {
      temperature: stream.between(263.15, 313.15),
      pressure: stream.between(60e3, 103e3),
      wind: randomWind(stream),
    },
  }
}
