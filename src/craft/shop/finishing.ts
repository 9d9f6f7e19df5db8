/** What is done to every can and edge, whatever the stove. Common practice, no source. */
export const BURN_OFF_STEPS: readonly string[] = [
  'Look at every can first: a dull grey or spangled coat is zinc, and a can that is not drawn to a magnet is aluminium. Neither goes into a fire.',
  'Peel the label off and wash the can; scrape thick paint off outdoors, wet, and bag it: old or unknown paint may hold lead.',
  'Outdoors, upwind of it, on bare ground: burn the cans out in a small hot wood fire until coat and liner are gone, all of them in one firing.',
  'Let them go cold by themselves, then brush them; never quench hot tin, it warps.',
  'The bare tin rusts and marks easily now: mark out and drill soon.',
]

export const DEBURR_STEPS: readonly string[] = [
  'Every hole, on both sides: turn a bit of about twice its diameter in it by hand, or a countersink, two turns.',
  'Every cut edge: half-round file along it, never across, then emery; run a cotton bud along: what catches it will catch skin.',
  'Inside a can, a round file wrapped in emery reaches the burrs; a burr of 0.3 mm (0.012 in) is a tenth of a small hole.',
  'Measure a hole after deburring, not before.',
]
