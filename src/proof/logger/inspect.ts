import { type Boil, boilOf } from './boil.ts'
import { type BurnRate, burnRateOf } from './burnRate.ts'
import { smoothed } from './localLine.ts'
import { type Outlier, outliersOf, resolutionOf } from './outliers.ts'
import type { Channel, LogPart } from './readLog.ts'
import { usualStep } from './step.ts'

/** What the readings of one channel show between two starts of the clock. */
export interface ChannelInspection {
  readonly name: string
  readonly quantity: Channel['quantity']
  readonly outliers: readonly Outlier[]
  /** How they were found. */
  readonly outlierMethod: string
  /** Of a temperature: when it came to stay at the boiling point of water. */
  readonly boil: Boil | null
  /** Of a weight. */
  readonly burnRate: BurnRate | null
}

/** Long enough for a knock to stand out, short enough to follow a fire [s]; a judgement. */
const BANDWIDTH = 30
/** So many usual steps where readings are further apart. */
const STEPS = 6
/** Fewer readings make no line to stand out from. */
const FEWEST = 5

const inspectChannel = (channel: Channel, boilingPoint: number): ChannelInspection => {
  const { name, quantity, time, value } = channel
  const enough = time.length >= FEWEST
  const smooth = smoothed(time, value, Math.max(BANDWIDTH, STEPS * usualStep(time)))
  return {
    name,
    quantity,
    outliers: enough ? outliersOf(channel, smooth, resolutionOf(value)) : [],
    outlierMethod: smooth.smooth.method,
    boil: enough && quantity === 'temperature' ? boilOf(time, value, boilingPoint) : null,
    burnRate: enough && quantity === 'mass' ? burnRateOf(time, value) : null,
  }
}

/** @param boilingPoint of water at that place [K] */
export const inspectPart = ({ channels }: LogPart, boilingPoint: number): readonly ChannelInspection[] =>
  channels.map((channel) => inspectChannel(channel, boilingPoint))
