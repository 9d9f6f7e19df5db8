import { parseArgs } from 'node:util'
import { CAMPAIGN_SEED, runCampaign } from '../test/science/campaign.ts'

// Predicts 100,000 random stoves with a fixed seed and says how the solver fared.
// `npm run stoves`, or with `-- --stoves 5000 --seed 7`; `--json` prints one object; `--quick` tries one place of the front
// a stove instead of four and no page of figures, for a million of them.

const { values } = parseArgs({
  options: {
    stoves: { type: 'string', default: '100000' },
    seed: { type: 'string', default: String(CAMPAIGN_SEED) },
    json: { type: 'boolean', default: false },
    quick: { type: 'boolean', default: false },
  },
})
const stoves = Number(values.stoves)
const seed = Number(values.seed)
if (!Number.isSafeInteger(stoves) || stoves < 1 || !Number.isSafeInteger(seed)) {
  console.error('--stoves and --seed are whole numbers, the first above 0.')
  process.exit(2)
}

const STEP = 5000
const began = performance.now()
const campaign = runCampaign(stoves, {
  seed,
  quick: values.quick,
  progress: (done) => {
    if (done % STEP === 0)
      console.error(
        `${done.toLocaleString('en')} stoves, ${((performance.now() - began) / 1000).toFixed(0)} s`,
      )
  },
})
const seconds = (performance.now() - began) / 1000
const { rounds } = campaign
const accepted = rounds.reduce((sum, count) => sum + count, 0)
const percentile = (share: number): number => {
  let seen = 0
  return rounds.findIndex((count) => {
    seen += count
    return seen >= share * accepted
  })
}
const reasons = [...campaign.reasons].sort(([, a], [, b]) => b.count - a.count)

if (values.json)
  console.log(
    JSON.stringify({
      stoves,
      seed,
      through: campaign.through / stoves,
      partWay: campaign.partWay / stoves,
      reasons: Object.fromEntries(reasons.map(([code, { count, first }]) => [code, { count, first }])),
      massResidual: campaign.massResidual,
      energyResidual: campaign.energyResidual,
      rounds: { median: percentile(0.5), p99: percentile(0.99), most: rounds.length - 1 },
      notFinite: campaign.notFinite.length,
      seconds,
    }),
  )
else {
  const share = (count: number): string => `${((100 * count) / stoves).toFixed(3)} %`
  const lines: [string, string][] = [
    [`random stoves, seed ${seed}`, stoves.toLocaleString('en')],
    ['burn through', share(campaign.through)],
    ['burn part of the way, then the front goes out', share(campaign.partWay)],
    ...reasons.map(([code, { count, first }]): [string, string] => [
      `  ${code}`,
      `${share(count)}  (${count}; such as ${first.slice(0, 4).join(', ')})`,
    ]),
    ['worst mass residual', campaign.massResidual.toExponential(1)],
    ['worst energy residual', campaign.energyResidual.toExponential(1)],
    ['rounds, median', String(percentile(0.5))],
    ['rounds, 99 of 100', String(percentile(0.99))],
    ['rounds, most', String(rounds.length - 1)],
    ['numbers that are none', String(campaign.notFinite.length)],
    ['time', `${seconds.toFixed(0)} s`],
  ]
  const wide = Math.max(...lines.map(([name]) => name.length))
  for (const [name, value] of lines) console.log(`${name.padEnd(wide)}  ${value}`)
}
if (campaign.notFinite.length > 0) {
  console.error(campaign.notFinite.slice(0, 10).join('\n'))
  process.exitCode = 1
}
