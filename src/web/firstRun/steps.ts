import type { DocumentHead } from '#wire/documents.ts'
import type { Place } from '../routes/routes.ts'

/** One sentence or two of the way round, and where it is to be seen. */
export interface GuideStep {
  readonly words: string
  /** The stove of the demo that it is told on; the first where that is not there. */
  readonly on?: string
  readonly place: (demo: DocumentHead) => Place
  readonly go: string
}

/** The stove of the demo that the way round is told on. */
export const GUIDE_STOVE = 'Redshank'

/** The way round, in the scenario of the demo. All of it is invented, and says so first. */
export const GUIDE_STEPS: readonly GuideStep[] = [
  {
    words:
      'Each winter, the story goes, a few volunteers count wading birds at the Wadfleet and brew tea at their posts. They and their stoves are invented: learn on them, and take nothing for measured.',
    place: () => ({ at: 'home' }),
    go: 'To the stoves',
  },
  {
    words:
      'Redshank boils one mug. Here it is cut open, with its air drawn through the holes. Take hold of the upper row of holes and move it: the numbers follow your hand.',
    place: ({ id: stove }) => ({ at: 'stove', stove }),
    go: 'Lay Redshank on the bench',
  },
  {
    words:
      'Undo takes it back, as far as you like. Every edit is kept as you make it; a revision is made when you say what you changed and why, and a variant when you want both.',
    place: ({ id: stove }) => ({ at: 'stove', stove }),
    go: 'And when it goes wrong?',
  },
  {
    words:
      'A variant has its place in the family of the stove, with what was changed, what was predicted, and what trials said. Heron, so the story goes, was built in six ways.',
    on: 'Heron',
    place: ({ id: stove }) => ({ at: 'family', stove }),
    go: 'To a family',
  },
  {
    words:
      'When you are content, the plan has templates in true size, steps and a list for the shop. Before you cut, read its cautions.',
    place: ({ id: stove }) => ({ at: 'plan', stove }),
    go: 'To its plan',
  },
  {
    words:
      'Then burn it, outdoors, and write down what it does: with a phone at the stove, or from a logger. After a few burns the bench says whether a change helped, or was luck: here of 24 burns of Heron, invented too.',
    on: 'Heron',
    place: ({ id: stove }) => ({ at: 'trials', stove }),
    go: 'To trials',
  },
  {
    words: 'Now your own: measure your cans and put them on the shelf, and start a stove from two of them.',
    place: () => ({ at: 'shelf' }),
    go: 'To the shelf',
  },
]
