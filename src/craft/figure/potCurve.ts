import type { BurnFigureInput, FigurePot } from './input.ts'
import type { Pixel } from './panel.ts'
import type { Scale } from './scale.ts'

const KELVIN_AT_ZERO_CELSIUS = 273.15

/** The line of one pot on the page. */
export interface PotCurve {
  readonly litres: number
  readonly points: readonly Pixel[]
  readonly boil: Pixel | null
  readonly dry: Pixel | null
  /** Warmest it gets, as text. */
  readonly warmest: string
}

/** From going on until it is dry, or to the end. */
export const potCurve = (
  pot: FigurePot,
  { steps, boilingPoint }: BurnFigureInput,
  time: Scale,
  water: Scale,
): PotCurve => {
  const { litres, from, boilsAt, dryAt } = pot
  const boil = boilsAt === null ? null : { x: time.at(boilsAt), y: water.at(boilingPoint) }
  const dry = dryAt === null ? null : { x: time.at(dryAt), y: water.at(boilingPoint) }
  const points: Pixel[] = [{ x: time.at(from), y: water.at(pot.start) }]
  for (const [i, step] of steps.entries()) {
    const at = step.time + step.duration
    if (at <= from || (dryAt !== null && at >= dryAt)) continue
    if (boil !== null && step.time < (boilsAt as number) && at >= (boilsAt as number)) points.push(boil)
    points.push({ x: time.at(at), y: water.at(pot.temperature[i] as number) })
  }
  if (dry !== null) points.push(dry)
  const warmest = Math.max(pot.start, ...pot.temperature) - KELVIN_AT_ZERO_CELSIUS
  const both = `${Math.round(warmest)}\u00a0°C\u00a0(${Math.round(warmest * 1.8 + 32)}\u00a0°F)`
  return { litres, points, boil, dry, warmest: both }
}
