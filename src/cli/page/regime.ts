import { wrap } from '#compose/page/text.ts'
import type { Prediction, Regime } from '#science/steady/prediction.ts'

export const REGIME_MEANING: Readonly<Record<Regime, string>> = {
  smoulder:
    'the front gets so little air that it smoulders: smoke and carbon monoxide, and a flame that may not hold. Give the fuel more air: open what chokes it most, which is named below, or make a bigger or freer floor, take coarser fuel or less of it, or give it more draught.',
  clean: 'the gas finds the air it needs and burns. That is no promise of clean air: burn outdoors only.',
  'rich and smoky':
    'the gas leaves with too little air to burn it: a smoky flame, and carbon monoxide. Give it more secondary or tertiary air, or the fuel less.',
  'quenched lean':
    'so much air falls on the gas that it may chill the flame and put it out. Fewer or smaller secondary holes.',
}

const SHELTER = 'It stands in the wind: try it behind a screen, `--screen`, as well.'

/** How the stove burns, what that means, and what to do about it. */
export const regimeBlock = ({ halfway, site }: Prediction, width: number): string => {
  const windy =
    site.wind.speed > 0 && site.wind.screened !== true && halfway.regime !== 'clean' ? ` ${SHELTER}` : ''
  return wrap(
    `Regime: ${halfway.regime.toUpperCase()}: ${REGIME_MEANING[halfway.regime]}${windy}`,
    width,
    '',
    '  ',
  )
}
