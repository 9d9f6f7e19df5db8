/** A word of the trade and what it means. */
export interface Word {
  readonly word: string
  readonly means: string
}

const MEANINGS: Readonly<Record<string, string>> = {
  can: 'One tin as bought: its diameter over the seam and on the body, height, wall, seams, beads and kind of end.',
  shell: 'The outer can.',
  'fuel can': 'The inner can, which holds the fuel.',
  'primary air': 'The air that goes up through the fuel.',
  'secondary air':
    'The air that blows into the gas above the fuel, through the ring of holes near the top of the fuel can.',
  'tertiary air': 'The air that joins the flame above that.',
  intake: 'The holes in the shell that let all the air in.',
  damper: 'A band that turns on the shell and covers part of the intake.',
  concentrator:
    'The disc over the fuel can with a bore, often with slits bent into vanes that make the flame whirl.',
  riser: 'A length of chimney between the concentrator and the pot.',
  'pot stand': 'The can that carries the pot and lets the flue gas out.',
  opening: 'One hole, slit or window. A ring of equal ones is a row; a disc full of them is a floor pattern.',
  front: 'The thin glowing layer that eats down through the fuel and makes gas.',
  char: 'What the front leaves behind.',
  firepower: 'Heat that the fire gives off each second.',
  turndown: 'The highest steady firepower divided by the lowest.',
  burn: 'A prediction over time, from lighting until the char is out.',
  trial: 'A real burn that was measured.',
  variant: 'A stove that differs from the one it was made from in something that has a name.',
  revision: 'A stove as it was saved, with a note of what was changed and why. None is ever overwritten.',
  plan: 'What is published, so that others can build it.',
  band: 'How far an answer may be out, by what is not known well. It does not know what the model leaves out.',
}

export const WORDS: readonly Word[] = Object.entries(MEANINGS).map(([word, means]) => ({ word, means }))
