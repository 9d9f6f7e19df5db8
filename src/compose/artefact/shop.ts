import { type ShopList, shopList } from '#craft/shop/list.ts'
import { bitSwaps } from '#craft/shop/swap.ts'
import type { Shelf, Stove } from '#stove/model.ts'
import { outlookOf } from '../outlook.ts'

/** The shop list of a stove, every swap of a missing bit solved anew. */
export const shopListOf = (stove: Stove, shelf: Shelf | null): ShopList => {
  const swaps = shelf === null ? [] : bitSwaps(stove, shelf)
  return shopList(stove, {
    shelf,
    outlook: swaps.length === 0 ? null : outlookOf(stove),
    whatIf: swaps.map((swap) => ({ swap, outlook: outlookOf(swap.stove) })),
  })
}
