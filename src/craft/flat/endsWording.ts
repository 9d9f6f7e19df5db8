import type { Can } from '#stove/model.ts'
import { both } from './wording.ts'

const endSentence = (can: Can, which: 'bottom' | 'top'): string | null => {
  switch (can[which].kind) {
    case 'open':
      return `Cut the ${which} end out along the wall with a can opener; its seam stays on.`
    case 'cut':
      return which === 'top'
        ? `Cut the can off ${both(can.height.value)} above its bottom edge: mark it along the upper edge of the paper, drill first, then cut.`
        : 'Cut the bottom off: mark the can along the lower edge of the paper, drill first, then cut; heights are measured from that edge.'
    case 'plain':
    case 'drawn':
    case 'pull-off':
    case 'friction':
      return null
  }
}

/** What is cut off a can or out of it besides its openings, as a paragraph; none where it stays as it was bought. */
export const endsNote = (can: Can): readonly string[] => {
  const sentences = (['bottom', 'top'] as const).flatMap((which) => endSentence(can, which) ?? [])
  return sentences.length === 0 ? [] : [sentences.join(' ')]
}
