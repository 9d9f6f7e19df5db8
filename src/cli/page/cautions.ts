import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { wrap } from './text.ts'

/** What goes with every page that tells someone to cut, build or burn. */
export const cautionBlock = (width: number): string =>
  ['Before you cut or burn', ...MAKING_CAUTIONS.map((line) => wrap(line, width, '  ', '  '))].join('\n')
