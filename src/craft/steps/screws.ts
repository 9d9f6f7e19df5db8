import { long } from '#basis/text/bothUnits.ts'
import { bottomOpening, outsideAt, topOpening } from '#stove/can/ends.ts'
import type { CanPart, Placement, Stove } from '#stove/model.ts'

/** How far the head of a small screw stands out of the wall [m]. From memory: 2.2 to 3.1 mm for M3 to M4. */
const HEAD = 0.003

const mouthOf = (stove: Stove, carrier: string): number | null => {
  const part = stove.parts.get(carrier)
  if (part?.form === 'can') return topOpening(part.can)?.value ?? null
  const bores = [...(part?.openings.values() ?? [])].flatMap((one) =>
    one.kind === 'bore' ? [one.diameter] : [],
  )
  return bores.length > 0 ? Math.max(...bores) : null
}

/** Whether a ring goes over a can from its foot. */
const passesFoot = ({ can }: CanPart, mouth: number): boolean =>
  outsideAt(can, 'bottom').value < mouth ||
  (bottomOpening(can) !== null && can.bodyDiameter.value < mouth && can.bottom.kind === 'cut')

/**
 * How screws get into the wall of a can that itself hangs or stands in something: from outside, so it comes out
 * again; and their heads may be too proud to pass what it hangs in. Sentences; none where the wall is free.
 */
export const reachingScrews = (stove: Stove, { host }: Placement): readonly string[] => {
  const held = stove.assembly.find(({ part }) => part === host)
  const wall = stove.parts.get(host ?? '')
  if (held === undefined || held.host === null || wall?.form !== 'can') return []
  if (held.place !== 'hangs in' && held.place !== 'stands in') return []
  const carrier = held.host
  const isRing = stove.parts.get(carrier)?.form === 'disc'
  const mouth = mouthOf(stove, carrier)
  const room = mouth === null ? null : (mouth - wall.can.bodyDiameter.value) / 2
  if (room === null || room >= HEAD)
    return [
      `The screws go in from outside: lift ${host} out of ${carrier} once more, and lower it back with them in.`,
    ]
  const proud = `Their heads stand out about ${long(HEAD)} and do not pass ${carrier}, which leaves ${long(Math.max(0, room))} all round.`
  return isRing && mouth !== null && passesFoot(wall, mouth)
    ? [
        `The screws go in from outside: lift ${host} out with ${carrier} on it, and lower both back together.`,
        `${proud} So ${carrier} goes round ${host} from below before the screws do.`,
      ]
    : [
        proud,
        `Take steel wire instead: through the holes from inside, both ends bent flat against the wall outside.`,
      ]
}
