import { readFileSync } from 'node:fs'
import { type Assets, assetOf } from '../asset/assets.ts'
import { PAIR_PAGE } from './invite.ts'

const folder = new URL('../../page/', import.meta.url)

/** The page that takes a code, for those who are not in yet: read once, it needs no build. */
export const pairPage = (): Assets =>
  new Map(
    (['html', 'css', 'js'] as const).map((ending) => {
      const asset = assetOf(`/pair.${ending}`, readFileSync(new URL(`pair.${ending}`, folder)))
      return [ending === 'html' ? PAIR_PAGE : `/pair.${ending}`, asset]
    }),
  )
