import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { wrap } from './text.ts'

const TITLE = 'Before you cut or burn'

/** What goes with every page that tells someone to cut, build or burn. */
export const cautionBlock = (width: number): string =>
  [TITLE, ...MAKING_CAUTIONS.map((line) => wrap(line, width, '  ', '  '))].join('\n')

/** A page without the cautions at its end, for whoever shows several and says them once, after the last. */
export const withoutCautions = (page: string): string => {
  const at = page.lastIndexOf(`\n\n${TITLE}\n`)
  return at < 0 ? page : page.slice(0, at + 1)
}
