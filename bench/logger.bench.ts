import { proposeMapping } from '#proof/logger/propose.ts'
import { readLog } from '#proof/logger/readLog.ts'
import type { Rows } from './row.ts'

const hourAtTenHertz = (): string => {
  const lines = [`t [s],${Array.from({ length: 8 }, (_, c) => `TC${c + 1} [°C]`).join(',')}`]
  for (let i = 0; i < 36_000; i++)
    lines.push(
      `${(i / 10).toFixed(1)},${Array.from({ length: 8 }, (_, c) => (20 + c + (i % 977) / 10).toFixed(1)).join(',')}`,
    )
  return lines.join('\n')
}

export const rows: Rows = async () => {
  const text = hourAtTenHertz()
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now()
    const proposal = proposeMapping(text)
    if (!proposal.ok || proposal.value.kind !== 'mapping') throw new Error('The file was not understood')
    readLog(text, proposal.value.mapping)
    return performance.now() - start
  }).sort((a, b) => a - b)
  return [
    {
      name: 'logger file of an hour at 10 Hz, 8 channels, sniffed and read',
      value: times[2] ?? 0,
      unit: 'ms',
      bar: { atMost: 1000 },
    },
  ]
}
