import { orThrow } from '#basis/problem.ts'
import { readLength } from '#basis/text/length.ts'
import { timing } from './measure.ts'
import type { Rows } from './row.ts'

const WRITTEN = ['16 mm', '1.6 cm', '5/8 in', '6 3/16 in', '2-1/4"', '⅝ in', '5/8 in (15.9 mm)', '0.1 m']

const readAll = (): number =>
  WRITTEN.reduce((sum, text) => sum + orThrow(readLength(text, 'height', 'windowHeight')), 0)

export const rows: Rows = async () => {
  const { perSecond } = await timing(readAll, { calls: WRITTEN.length })
  return [{ name: 'lengths read as makers write them', value: perSecond, unit: '1/s', bar: null }]
}
