/** A word of the trade and what it means. */
export interface Word {
  readonly word: string
  readonly means: string
}

export const WORDS: readonly Word[] = [
  {
    word: 'can',
    means:
      'One tin as bought: its diameter over the seam and on the body, height, wall, seams, beads and kind of end.',
  },
  { word: 'shell', means: 'The outer can.' },
  { word: 'fuel can', means: 'The inner can, which holds the fuel.' },
  { word: 'primary air', means: 'The air that goes up through the fuel.' },
  {
    word: 'secondary air',
    means:
      'The air that blows into the gas above the fuel, through the ring of holes near the top of the fuel can.',
  },
  { word: 'tertiary air', means: 'The air that joins the flame above that.' },
  { word: 'intake', means: 'The holes in the shell that let all the air in.' },
  { word: 'damper', means: 'A band that turns on the shell and covers part of the intake.' },
  {
    word: 'concentrator',
    means:
      'The disc over the fuel can with a bore, often with slits bent into vanes that make the flame whirl.',
  },
  { word: 'riser', means: 'A length of chimney between the concentrator and the pot.' },
  { word: 'pot stand', means: 'The can that carries the pot and lets the flue gas out.' },
  {
    word: 'opening',
    means: 'One hole, slit or window. A ring of equal ones is a row; a disc full of them is a floor pattern.',
  },
  { word: 'front', means: 'The thin glowing layer that eats down through the fuel and makes gas.' },
  { word: 'char', means: 'What the front leaves behind.' },
  { word: 'firepower', means: 'Heat that the fire gives off each second.' },
  { word: 'turndown', means: 'The highest steady firepower divided by the lowest.' },
  { word: 'burn', means: 'A prediction over time, from lighting until the char is out.' },
  { word: 'trial', means: 'A real burn that was measured.' },
  {
    word: 'variant',
    means: 'A stove that differs from the one it was made from in something that has a name.',
  },
  {
    word: 'revision',
    means: 'A stove as it was saved, with a note of what was changed and why. None is ever overwritten.',
  },
  { word: 'plan', means: 'What is published, so that others can build it.' },
  {
    word: 'band',
    means:
      'How far an answer may be out, by what is not known well. It does not know what the model leaves out.',
  },
]
