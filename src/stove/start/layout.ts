import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { bodyInside, floorHeight, isSeamed, outsideAt, seamAt } from '#stove/can/ends.ts'
import { widestBody } from '#stove/can/taper.ts'
import { AREAS, HEIGHTS } from '#stove/check/rules.ts'
import { resolveStove } from '#stove/document/read.ts'
import { STOVE_FORMAT, type StoveFile } from '#stove/document/schema.ts'
import type { Can } from '#stove/model.ts'
import type { StartChoice, Way } from './choice.ts'
import { damperOver } from './damper.ts'
import { planFloor } from './floor.ts'
import { markedDown, markedUp, planRow } from './row.ts'
import { standOf } from './stand.ts'
import { planVanes } from './vanes.ts'
import { CUT, measuresOf, mm, nearestTo, OPEN, type PartFile, rowFile, withoutFoot } from './written.ts'

/** Tin a maker has for discs: a flattened can [m]. */
const SHEET = 0.00025
/** Screws that carry a grate, a quarter of their size over it [m]. */
const GRATE_SCREW = 0.004
const GRATE_RAISED = 0.014
const SCREW_HEIGHT = 0.012
/** A grate this much narrower than the can goes in and is held by its screws [m]. */
const GRATE_PLAY = 0.0016
/** Air under the fuel can, besides what its holes need [m]. */
const UNDER = 0.008
/** Ledge on which a disc or ring lies, all round [m]. */
const LEDGE = 0.002

/** A narrower bore may leave the room. */
export const NO_VANES = 'start.no-vanes'

const refuse = (code: string, field: string, value: string, allowed: string, fix: string): Outcome<never> =>
  bad({ code, field, value, allowed, fix } satisfies Problem)

/** The usual pot that is wider than what carries it, in steps of a centimetre [m]. */
const potFor = (rim: number): number => Math.ceil((rim + 0.02) / 0.01) * 0.01

/**
 * One way to build a stove of two cans, every row sized by the area rules of the checks. What comes out reads; whether it
 * holds and burns is for the checks and the model.
 */
export const layOut = (choice: StartChoice, way: Way): Outcome<StoveFile> => {
  const { outer, inner, potStand, bits } = choice
  const shell = outer.can
  const fuelCan = inner.can
  const inside = bodyInside(fuelCan).value
  const bed = (Math.PI * inside ** 2) / 4

  const bottomSeam = isSeamed(fuelCan.bottom) ? seamAt(fuelCan, 'bottom').value : widestBody(fuelCan).value
  const shellFloor = floorHeight(shell)
  if (shellFloor === null)
    return refuse(
      'start.no-ground',
      outer.name,
      'an open bottom',
      'a can with its bottom whole',
      'Choose another can for the outside, or turn it over.',
    )
  // As it stands: a lid that was pulled off or levered stays as it is, a whole top is cut out.
  const shellTop = shell.top.kind === 'plain' || shell.top.kind === 'drawn' ? OPEN : outer.item.top
  const shellOpen: Can = shellTop === OPEN ? { ...shell, top: { kind: 'open' } } : shell
  const rim = outsideAt({ ...fuelCan, top: { kind: 'open' } }, 'top').value
  const ringBore = markedUp(
    Math.max(widestBody(fuelCan).value, way.floor === 'its own' ? bottomSeam : 0) + 0.001,
  )

  // From the shell's top edge down to its floor there has to be room for the can and the air under it.
  const room = shell.height.value - shellFloor - UNDER
  const trimmed = way.floor === 'a grate'
  const footCut = Math.max(trimmed ? 0.006 : 0, fuelCan.height.value - room)
  if (!trimmed && fuelCan.height.value > room)
    return refuse(
      'start.too-tall',
      inner.name,
      mm(fuelCan.height.value),
      `at most ${mm(room)} in ${outer.name}`,
      'Cut its bottom off and lay a grate in it, or choose a shorter can.',
    )
  const height = markedDown(fuelCan.height.value - footCut)
  if (height < 0.055)
    return refuse('start.too-short', inner.name, mm(height), 'at least 55 mm of wall', 'Choose a taller can.')
  const standing: Can = {
    ...fuelCan,
    height: { ...fuelCan.height, value: height },
    top: { kind: 'open' },
    ...(trimmed ? { bottom: { kind: 'cut' as const } } : {}),
    beads: trimmed
      ? fuelCan.beads.flatMap(({ from, to }) =>
          to - footCut <= 0
            ? []
            : [{ from: Math.max(0, from - footCut) as typeof from, to: (to - footCut) as typeof to }],
        )
      : fuelCan.beads,
  }

  const secondary = planRow(standing, bits, {
    area: way.secondary * bed,
    from: 'top',
    least: 0.012,
    damperRoom: null,
  })
  if (secondary === null)
    return refuse(
      'start.no-secondary',
      inner.name,
      '',
      'a bit whose holes leave a hole’s width of tin',
      'Add a bit of 6 to 10 mm to the shelf, or choose another can.',
    )
  const grate = markedDown(inside - GRATE_PLAY)
  const floor = planFloor(trimmed ? grate : inside, bits, way.floorHoles)
  if (floor === null)
    return refuse(
      'start.no-floor',
      inner.name,
      '',
      'room for seven holes in the floor',
      'Add a bit of 4 to 6 mm to the shelf, or choose a wider can.',
    )

  const intakeArea = 1.2 * AREAS.intakeToInner.low * (floor.area + secondary.area)
  const withDamper = choice.damper
  const bandOver = 0.006
  const intake = planRow(shellOpen, bits, {
    area: intakeArea,
    from: 'bottom',
    least: withDamper ? shell.seamHeight + 0.001 + bandOver + 0.006 : 0.012,
    damperRoom: withDamper ? 0.0045 : null,
  })
  if (intake === null)
    return refuse(
      'start.no-intake',
      outer.name,
      '',
      'a bit whose holes leave their tin',
      'Add a bit of 10 to 16 mm to the shelf, or leave the damper out.',
    )

  // The fuel ends a finger's breadth under the holes that feed the gas.
  const floorUp = trimmed ? GRATE_RAISED + 0.0005 : (floorHeight(fuelCan) ?? 0)
  const bare = HEIGHTS.fuelBelowSecondary.value + 0.002
  const level = Math.floor((secondary.height - secondary.bit.diameter / 2 - bare - floorUp) / 0.001) * 0.001
  if (level < 0.02)
    return refuse(
      'start.no-fuel',
      inner.name,
      mm(Math.max(0, level)),
      'room for at least 20 mm of fuel',
      'Choose a taller can for the fuel.',
    )

  const bore = Math.round((way.bore * inside) / 0.001) * 0.001
  const free = potStand === null ? inside : Math.min(inside, bodyInside(potStand.can).value)
  const vanes = choice.vanes ? planVanes(bore, free) : null
  if (choice.vanes && vanes === null)
    return refuse(
      NO_VANES,
      inner.name,
      mm(bore),
      'a bore with room round it for slits of 8 mm',
      'Choose a wider can for the fuel, or leave the vanes out.',
    )
  const passage = (Math.PI * bore ** 2) / 4 + (vanes?.area ?? 0)
  const stand = potStand === null ? null : standOf(potStand, passage)
  if (potStand !== null && stand === null)
    return refuse(
      'start.no-stand',
      potStand.name,
      '',
      'a can with room for windows under its rim',
      'Choose a wider or taller can for the pot stand.',
    )
  const closes = way.holding === 'on feet' ? outsideAt(shellOpen, 'top').value : rim
  const disc = markedUp(Math.max(closes, stand?.needs ?? 0) + 2 * LEDGE)
  const top = stand === null ? disc : stand.needs
  const pot = choice.potDiameter ?? potFor(top)

  const parts: Record<string, PartFile> = {}
  const assembly: StoveFile['assembly'][number][] = [{ part: 'shell', place: 'on ground' }]
  parts.shell = {
    form: 'can',
    role: 'shell',
    can: measuresOf(outer.item),
    bottom: outer.item.bottom ?? { end: 'plain' },
    top: shellTop ?? OPEN,
    openings: { intake: rowFile('intake', intake, null) },
  }
  if (way.holding === 'by a ring') {
    parts['lid ring'] = {
      form: 'disc',
      role: 'lid ring',
      diameter: `${mm(markedUp(outsideAt(shellOpen, 'top').value + 2 * LEDGE))} ± 1 mm`,
      thickness: '0.3 mm',
      openings: { seat: { kind: 'bore', duty: 'fixing', diameter: mm(ringBore) } },
    }
    assembly.push({ part: 'lid ring', place: 'sits on', host: 'shell' })
  }
  parts['fuel can'] = {
    form: 'can',
    role: 'fuel can',
    can: trimmed ? withoutFoot(inner.item, fuelCan, footCut) : measuresOf(inner.item),
    bottom: trimmed ? CUT : (inner.item.bottom ?? { end: 'plain' }),
    top: OPEN,
    ...(trimmed ? { trim: { height: mm(height) } } : {}),
    openings: {
      ...(trimmed
        ? {
            'grate screws': {
              kind: 'row',
              duty: 'fixing',
              hole: { bit: nearestTo(bits, GRATE_SCREW).name },
              count: 3,
              height: mm(SCREW_HEIGHT),
              bearing: '60 deg',
            },
          }
        : {
            floor: {
              kind: 'pattern',
              duty: 'primary',
              face: 'bottom',
              hole: { bit: floor.bit.name },
              layout: { hexagonal: { count: floor.count, margin: mm(floor.margin) } },
            },
          }),
      ring: rowFile('secondary', secondary, height),
    },
  }
  assembly.push(
    way.holding === 'on feet'
      ? {
          part: 'fuel can',
          place: 'stands in',
          host: 'shell',
          raised: mm(shell.height.value - height - shellFloor),
        }
      : { part: 'fuel can', place: 'hangs in', host: way.holding === 'by a ring' ? 'lid ring' : 'shell' },
  )
  if (trimmed) {
    parts.grate = {
      form: 'disc',
      role: 'grate',
      diameter: `${mm(grate)} ± 0.5 mm`,
      thickness: '0.5 mm',
      openings: {
        floor: {
          kind: 'pattern',
          duty: 'primary',
          hole: { bit: floor.bit.name },
          layout: { hexagonal: { count: floor.count, margin: mm(floor.margin) } },
        },
      },
    }
    assembly.push({ part: 'grate', place: 'slips into', host: 'fuel can', raised: mm(GRATE_RAISED) })
  }
  parts.concentrator = {
    form: 'disc',
    role: 'concentrator',
    diameter: `${mm(disc)} ± 1 mm`,
    thickness: mm(SHEET),
    openings: {
      bore: { kind: 'bore', duty: 'passage', diameter: mm(bore) },
      ...(vanes === null ? {} : { vanes: vanes.file }),
    },
  }
  assembly.push({ part: 'concentrator', place: 'sits on', host: 'fuel can' })
  if (withDamper) {
    const { part, raised } = damperOver(intake, bandOver)
    parts.damper = part
    assembly.push({ part: 'damper', place: 'slips over', host: 'shell', raised: mm(raised) })
  }
  if (stand !== null) {
    parts['pot stand'] = stand.part
    assembly.push({ part: 'pot stand', place: 'sits on', host: 'concentrator' })
  }
  const file: StoveFile = {
    format: STOVE_FORMAT,
    name: choice.name,
    about: `Started from ${outer.name} and ${inner.name} of the shelf${potStand === null ? '' : `, with ${potStand.name} as pot stand`}; rows sized by area. Not built yet.`,
    fuel: { kind: choice.fuel, level: mm(level) },
    pot: { diameter: mm(pot), ...(stand === null ? { gap: '22 mm' } : {}) },
    parts,
    assembly,
  }
  const read = resolveStove(file)
  return read.ok ? good(file) : read
}
