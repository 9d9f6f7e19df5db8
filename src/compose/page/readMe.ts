import { strToU8 } from 'fflate'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { page, wrap } from './text.ts'

/** Letters of a page that goes with files of solids, which themselves have no room for words. */
const WIDE = 78

/** The text that lies beside files of solids: what they are, and the cautions. */
export const readMe = (title: string, blocks: readonly (readonly string[])[]): Uint8Array =>
  strToU8(
    page(
      wrap(title, WIDE),
      ...blocks.map(([head = '', ...lines]) =>
        [wrap(head, WIDE), ...lines.map((line) => wrap(line, WIDE, '  ', '    '))].join('\n'),
      ),
      ['Before you cut or burn', ...MAKING_CAUTIONS.map((line) => wrap(line, WIDE, '  ', '  '))].join('\n'),
    ),
  )
