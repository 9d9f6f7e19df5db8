import type { Artefact } from '#compose/artefact/artefacts.ts'
import type { Issue } from './issue.ts'

/** Something to take away: what it is called, and what it is good for. */
export interface Offer {
  readonly artefact: Artefact
  readonly title: string
  readonly about: string
  /** Ends of its names, as they come out. */
  readonly as: string
}

export interface OfferGroup {
  readonly title: string
  readonly offers: readonly Offer[]
}

const reading = ({ paper }: Issue): string => (paper === 'Letter' ? 'Letter' : 'A4')

/** Everything that can be made of a stove, in the order in which a maker wants it. */
export const offersOf = (issue: Issue): readonly OfferGroup[] => [
  {
    title: 'The whole plan',
    offers: [
      {
        artefact: 'plan pages',
        title: 'Plan to print',
        about: 'Cover, what it does, what to find, cuts, steps, templates at true size, sheets to fill in.',
        as: `PDF, ${reading(issue)}`,
      },
      {
        artefact: 'plan screen',
        title: 'Plan for a screen',
        about: 'The same in one file: mm, inch or both, and the stove to turn.',
        as: 'HTML',
      },
      {
        artefact: 'stove file',
        title: 'Stove file',
        about: 'Opens in any bench; reads well in a text editor.',
        as: 'JSON',
      },
    ],
  },
  {
    title: 'Templates, true size',
    offers: [
      {
        artefact: 'templates',
        title: 'Templates to print',
        about: 'Wraps and discs with check bars. Print at 100 %, then measure the bars.',
        as: `PDF, ${issue.paper}`,
      },
      {
        artefact: 'drawings svg',
        title: 'Drawings, whole',
        about: 'One file a drawing, for a plotter or a drawing program.',
        as: 'SVG',
      },
      { artefact: 'drawings dxf', title: 'Drawings for a cutter', about: 'Layers by tool.', as: 'DXF' },
    ],
  },
  {
    title: 'At the bench',
    offers: [
      {
        artefact: 'shop list',
        title: 'Shop list',
        about: 'Cans, bits, fasteners, tools; the drill schedule, the order of the cuts, the time.',
        as: 'text',
      },
      {
        artefact: 'steps',
        title: 'Steps',
        about: 'What to do, one thing at a time, a picture a step.',
        as: 'text and SVG',
      },
      {
        artefact: 'guides',
        title: 'Drill guides',
        about: 'Collars and discs for a 3-D printer that hold the bit where the hole goes.',
        as: issue.solidFormat.toUpperCase(),
      },
      {
        artefact: 'sheets',
        title: 'Sheets to fill in',
        about: 'The stove as built, and one burn, with what is predicted beside the blanks.',
        as: `PDF, ${reading(issue)}, and JSON`,
      },
    ],
  },
  {
    title: 'To show',
    offers: [
      {
        artefact: 'cards',
        title: 'Cards',
        about: 'One a part, wide and square, for a video or a post; and a list of every size to read aloud.',
        as: `${issue.cardFormat.toUpperCase()} and text`,
      },
      {
        artefact: 'solids',
        title: 'Solids',
        about: 'Every part as a closed solid, in millimetres.',
        as: issue.solidFormat.toUpperCase(),
      },
    ],
  },
]
