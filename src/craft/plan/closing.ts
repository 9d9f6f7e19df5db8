import { planCode } from '#stove/document/planCode.ts'
import type { Block } from '../page/block.ts'
import { codePicture } from './code.ts'
import type { PlanInput } from './input.ts'

/** A module of the code on paper, so that a telephone reads it at arm's length [pt]. Common practice, no source. */
const MODULE = 1.7

const termsTable = ({ stove, author, licence, date, version }: PlanInput): Block => ({
  kind: 'table',
  head: ['', ''],
  widths: [2, 5],
  rows: [
    ['plan', stove.name],
    ['published by', author ?? 'nobody is named'],
    [
      'terms',
      licence ?? 'none are stated: ask whoever published it before you pass it on changed or sell it',
    ],
    ['made', `${date}, by Tinwright ${version}`],
    ['lettering', 'Source Sans 3, SIL Open Font License 1.1'],
  ],
})

/** The terms beside the stove itself as a code, where it is not too large for one. */
const termsBlocks = (input: PlanInput): readonly Block[] => {
  const text = planCode(input.file)
  if (text === null)
    return [
      termsTable(input),
      { kind: 'text', text: 'This stove is too large for a code: ask for its file.' },
    ]
  const { svg, modules } = codePicture(text)
  return [
    {
      kind: 'beside',
      share: 0.42,
      left: [
        {
          kind: 'picture',
          svg,
          says: 'The stove file as a code.',
          share: 1,
          firm: true,
          tallest: (modules + 8) * MODULE,
        },
      ],
      right: [
        termsTable(input),
        {
          kind: 'text',
          text: 'The square holds the whole stove file. Read it with any scanner, keep the text it gives (it begins with TINWRIGHT1:) in a file, and open that file as you would the stove file: to predict it, to change it, to print this plan again.',
        },
        {
          kind: 'text',
          muted: true,
          text: `${text.length} letters, ${modules} squares across; a checksum tells if one was misread.`,
        },
      ],
    },
  ]
}

/** Who made it, under what terms, with what; the cautions again; the stove itself as a code. */
export const closingBlocks = (input: PlanInput): readonly Block[] => [
  {
    kind: 'together',
    blocks: [
      { kind: 'heading', text: 'Cautions, terms, and the file' },
      { kind: 'cautions', title: 'They go with every copy of this plan', items: input.shop.cautions },
      ...termsBlocks(input),
    ],
  },
]
