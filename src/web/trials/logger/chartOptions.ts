import uPlot from 'uplot'
import type { ChartLook } from './chartLook.ts'
import type { Curve, CurveUnit } from './curves.ts'

export interface ChartMark {
  /** After lighting [min]. */
  readonly x: number
  readonly label: string
}

export interface ChartDot {
  readonly x: number
  readonly y: number
  readonly unit: CurveUnit
}

/** What a chart shows. */
export interface Shown {
  readonly curves: readonly Curve[]
  readonly marks: readonly ChartMark[]
  /** Readings to look at twice: ringed. */
  readonly dots: readonly ChartDot[]
}

/** Of the drawing [px]. */
export const HEIGHT = 340
const sameTimes = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a[0] === b[0] && a.at(-1) === b.at(-1) && a[a.length >> 1] === b[a.length >> 1]

/** One line of time for all channels; those read less often leave it open without lifting the pen. */
export const joined = (curves: readonly Curve[]): uPlot.AlignedData => {
  const [first] = curves
  if (first === undefined) return [[]]
  return curves.every(({ x }) => sameTimes(x, first.x))
    ? [first.x, ...curves.map(({ y }) => y)]
    : uPlot.join(curves.map(({ x, y }) => [x, y]))
}

const drawMarks = (chart: uPlot, marks: readonly ChartMark[], look: ChartLook): void => {
  const { ctx, bbox } = chart
  const ratio = devicePixelRatio
  ctx.save()
  ctx.beginPath()
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height)
  ctx.clip()
  ctx.strokeStyle = look.muted
  ctx.fillStyle = look.ink
  ctx.lineWidth = ratio
  ctx.font = `${12 * ratio}px ${look.font}`
  // The axes leave theirs behind.
  ctx.textAlign = 'left'
  ctx.textBaseline = 'alphabetic'
  /** Where each line of words ends. */
  const ends: number[] = []
  for (const { x, label } of marks) {
    const at = chart.valToPos(x, 'x', true)
    if (at < bbox.left || at > bbox.left + bbox.width) continue
    ctx.setLineDash([4 * ratio, 4 * ratio])
    ctx.beginPath()
    ctx.moveTo(at, bbox.top)
    ctx.lineTo(at, bbox.top + bbox.height)
    ctx.stroke()
    const free = ends.findIndex((end) => end <= at)
    const row = free < 0 ? ends.length : free
    ctx.fillText(label, at + 3 * ratio, bbox.top + (14 + 14 * row) * ratio)
    ends[row] = at + ctx.measureText(label).width + 8 * ratio
  }
  ctx.restore()
}

const drawDots = (chart: uPlot, dots: readonly ChartDot[], look: ChartLook): void => {
  const { ctx, bbox } = chart
  const ratio = devicePixelRatio
  ctx.save()
  ctx.strokeStyle = look.ember
  ctx.lineWidth = 1.5 * ratio
  for (const { x, y, unit } of dots) {
    const [at, up] = [chart.valToPos(x, 'x', true), chart.valToPos(y, unit, true)]
    if (at < bbox.left || at > bbox.left + bbox.width) continue
    ctx.beginPath()
    ctx.arc(at, up, 5 * ratio, 0, 2 * Math.PI)
    ctx.stroke()
  }
  ctx.restore()
}

/** The mark that the maker set, to be lined up with a moment of the log [min]. */
export const drawPicked = (chart: uPlot, picked: number | null, look: ChartLook): void => {
  if (picked === null) return
  const { ctx, bbox } = chart
  const ratio = devicePixelRatio
  const at = chart.valToPos(picked, 'x', true)
  if (at < bbox.left || at > bbox.left + bbox.width) return
  ctx.save()
  ctx.strokeStyle = look.ember
  ctx.fillStyle = look.ember
  ctx.lineWidth = 2 * ratio
  // The curves leave their dashes behind.
  ctx.setLineDash([])
  ctx.beginPath()
  ctx.moveTo(at, bbox.top)
  ctx.lineTo(at, bbox.top + bbox.height)
  ctx.stroke()
  // A foot that is seen where the line hides behind another.
  ctx.beginPath()
  ctx.moveTo(at, bbox.top + bbox.height - 9 * ratio)
  ctx.lineTo(at + 6 * ratio, bbox.top + bbox.height)
  ctx.lineTo(at - 6 * ratio, bbox.top + bbox.height)
  ctx.fill()
  ctx.restore()
}

/** Axes, pens and what is drawn on top. `look` is asked at every drawing: on paper it is another one. */
export const optionsFor = (
  { curves, marks, dots }: Shown,
  width: number,
  look: () => ChartLook,
): uPlot.Options => {
  const { font: family, border, curve } = look()
  const ink = (): string => look().ink
  const grid = { stroke: () => look().hairline, width: 1 }
  const font = `12px ${family}`
  const axis = { stroke: ink, grid, ticks: grid, font, labelFont: `13px ${family}` }
  const units = [...new Set(curves.map(({ unit }) => unit))]
  return {
    width,
    height: HEIGHT,
    scales: { x: { time: false } },
    legend: { live: true, markers: { width: 2, dash: (_, series) => border(series - 1) } },
    cursor: { drag: { x: true, y: false }, points: { size: 6 } },
    axes: [
      { ...axis, label: 'minutes after lighting' },
      ...units.map((unit, i) => ({
        ...axis,
        scale: unit,
        label: unit,
        side: (i === 0 ? 3 : 1) as 3 | 1,
        grid: i === 0 ? grid : { show: false },
      })),
    ],
    series: [
      { label: 'min', value: (_, at) => (at == null ? '–' : at.toFixed(2)) },
      ...curves.map(({ name, unit }, i) => ({
        label: name,
        scale: unit,
        width: 1.5,
        dash: curve(i).dash,
        stroke: () => look().curve(i).stroke,
        points: { show: false },
        value: (_: uPlot, y: number | null) => (y == null ? '–' : `${y.toFixed(1)} ${unit}`),
      })),
    ],
    hooks: {
      draw: [
        (chart) => {
          drawMarks(chart, marks, look())
          drawDots(chart, dots, look())
        },
      ],
    },
  }
}
