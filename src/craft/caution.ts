/**
 * The cautions of a page that tells someone to cut a stove, in short. They travel with every such page.
 */
export const MAKING_CAUTIONS: readonly string[] = [
  'Gloves and eye protection. Clamp before drilling. Deburr every edge. Never galvanised metal.',
  'Burn off paint, lacquer and can liners outdoors, upwind, before any food use; old or unknown paint may hold lead.',
  'Burn outdoors only, never in a tent, shelter or vehicle: carbon monoxide, from char long after the flame: drown it.',
  'Outer surfaces burn skin. Bare, level mineral ground; water or sand at hand; dry, untreated wood; obey fire bans.',
  'For learning and planning, not an approval: where a permit, a licensed person or a local code applies, that decides.',
]

/**
 * The same on a card that is seen as small as a palm, read at a glance: what harms at once. They stand for the whole list,
 * which goes with the text list and the plan.
 */
export const CARD_CAUTIONS: readonly string[] = [
  'Outdoors only: carbon monoxide, from char long after the flame.',
  'Hot: it burns skin.',
  'Gloves, goggles. Burn off coatings; never galvanised.',
  'Not an approval.',
]
