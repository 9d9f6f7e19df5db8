import type { Problem } from '#basis/problem.ts'
import type { Degrees, Metres } from '#basis/units.ts'
import type { Placement } from '#stove/model.ts'
import { nearest } from './nearest.ts'
import { type Place, problemAt, within } from './place.ts'
import type { PartRead, PlacementRead } from './schema.ts'

/** What is placed where: rules that hold whatever the sizes are. Whether parts fit is for `stove/fit`. */
type Parts = ReadonlyMap<string, PartRead>

const hostOf = (placement: PlacementRead): string | null => ('host' in placement ? placement.host : null)

export const placementOf = (read: PlacementRead): Placement => ({
  part: read.part,
  place: read.place,
  host: hostOf(read),
  raised: (('raised' in read ? read.raised : undefined) ?? 0) as Metres,
  turned: (read.turned ?? 0) as Degrees,
})

const listed = (names: Iterable<string>): string => [...names].map((name) => `"${name}"`).join(', ') || 'none'

const unknownPart = (name: string, parts: Parts, place: Place): readonly Problem[] => {
  if (parts.has(name)) return []
  const near = nearest(name, [...parts.keys()])
  return [
    problemAt(
      place,
      'assembly.unknown-part',
      `a name from "parts": ${listed(parts.keys())}`,
      near === null ? 'Name a part of this stove, or add this one to "parts".' : `Was "${near}" meant?`,
    ),
  ]
}

/** Whether following hosts from this part comes back to it. */
const carriesItself = (name: string, assembly: readonly PlacementRead[]): boolean => {
  const hosts = new Map(assembly.map((placement) => [placement.part, hostOf(placement)]))
  const seen = new Set<string>()
  let here = hosts.get(name) ?? null
  while (here !== null && !seen.has(here)) {
    if (here === name) return true
    seen.add(here)
    here = hosts.get(here) ?? null
  }
  return false
}

const hostProblems = (
  index: number,
  assembly: readonly PlacementRead[],
  parts: Parts,
  at: Place,
): readonly Problem[] => {
  const placement = assembly[index]
  const host = placement === undefined ? null : hostOf(placement)
  if (placement === undefined || host === null) return []
  const { part } = placement
  const place = within(at, 'host')
  const unknown = unknownPart(host, parts, place)
  if (unknown.length > 0) return unknown
  const others = [...parts.keys()].filter((name) => name !== part)
  if (host === part)
    return [
      problemAt(
        place,
        'assembly.in-itself',
        `another part: ${listed(others)}`,
        `"${part}" cannot hold itself: name the part it sits or hangs on.`,
      ),
    ]
  const before = new Set(assembly.slice(0, index).map((one) => one.part))
  if (before.has(host)) return []
  if (carriesItself(part, assembly))
    return [
      problemAt(
        place,
        'assembly.cycle',
        'a part that does not rest on this one in the end',
        `"${part}" and "${host}" hold each other up: one part of the stove must stand on the ground.`,
      ),
    ]
  return [
    problemAt(
      place,
      'assembly.host-later',
      before.size === 0
        ? 'a part placed further up; there is none yet'
        : `a part placed further up: ${listed(before)}`,
      assembly.some((one) => one.part === host)
        ? `Move the line of "${host}" above that of "${part}".`
        : `Place "${host}" first.`,
    ),
  ]
}

const formProblems = (placement: PlacementRead, parts: Parts, at: Place): readonly Problem[] => {
  const part = parts.get(placement.part)
  const name = hostOf(placement)
  const host = name === null ? undefined : parts.get(name)
  const place = within(at, 'place')
  const refuse = (code: string, allowed: string, fix: string): readonly Problem[] => [
    problemAt(place, code, allowed, fix),
  ]
  if (part?.form === 'band' && placement.place !== 'slips over')
    return refuse('assembly.band', '"slips over", for a band', 'A damper goes round the outside of a can.')
  if (part?.form === 'disc' && placement.place === 'hangs in')
    return refuse(
      'assembly.disc',
      '"sits on", "stands in" or "slips into", for a disc',
      'A disc has no rim to hang by.',
    )
  if (host?.form === 'band')
    return refuse(
      'assembly.on-band',
      'a can or a disc as host',
      'A damper turns and carries nothing: name the can under it.',
    )
  if (host?.form === 'disc' && (placement.place === 'stands in' || placement.place === 'slips over'))
    return refuse(
      'assembly.host-disc',
      '"sits on", "hangs in" or "slips into", where the host is a disc',
      `A disc has no inside and no wall: does it sit on "${name}"?`,
    )
  return []
}

const countProblems = (
  assembly: readonly PlacementRead[],
  parts: Parts,
  place: Place,
): readonly Problem[] => {
  const times = new Map<string, number[]>()
  for (const [index, { part }] of assembly.entries()) times.set(part, [...(times.get(part) ?? []), index])
  const twice = [...times].flatMap(([name, indices]) =>
    indices
      .slice(1)
      .map((index) =>
        problemAt(
          within(place, index, 'part'),
          'assembly.placed-twice',
          'each part once',
          `"${name}" is placed already: if there are two, give the second a name of its own in "parts".`,
        ),
      ),
  )
  const never = [...parts.keys()]
    .filter((name) => !times.has(name))
    .map((name) =>
      problemAt(
        place,
        'assembly.not-placed',
        'each part once',
        `Say where "${name}" goes, or take it out of "parts".`,
        `no line for "${name}"`,
      ),
    )
  return [...twice, ...never]
}

/** Roles of which a stove has one at most. */
const SINGLE = ['shell', 'fuel can', 'concentrator', 'riser', 'pot stand', 'grate'] as const

const roleProblems = (parts: Parts, place: Place): readonly Problem[] => {
  const withRole = (role: string): string[] =>
    [...parts].flatMap(([name, part]) => (part.role === role ? [name] : []))
  const several = SINGLE.flatMap((role) => {
    const names = withRole(role)
    return names
      .slice(1)
      .map((name) =>
        problemAt(
          within(place, name, 'role'),
          'parts.role-twice',
          `one ${role} in a stove`,
          `"${names[0]}" is the ${role} already: give one of the two another role.`,
        ),
      )
  })
  if (withRole('fuel can').length > 0) return several
  const none = problemAt(
    place,
    'parts.no-fuel-can',
    'one part with "role": "fuel can"',
    'Give the can that holds the fuel the role "fuel can"; in a single-wall stove it is the only wall.',
    listed(parts.keys()),
  )
  return [...several, none]
}

/** Everything in the assembly that cannot be, whatever the parts measure. */
export const assemblyProblems = (
  assembly: readonly PlacementRead[],
  parts: Parts,
  root: Place,
): readonly Problem[] => {
  const place = within(root, 'assembly')
  return [
    ...roleProblems(parts, within(root, 'parts')),
    ...assembly.flatMap((placement, index) => {
      const at = within(place, index)
      return [
        ...unknownPart(placement.part, parts, within(at, 'part')),
        ...hostProblems(index, assembly, parts, at),
        ...formProblems(placement, parts, at),
      ]
    }),
    ...countProblems(assembly, parts, place),
  ]
}
