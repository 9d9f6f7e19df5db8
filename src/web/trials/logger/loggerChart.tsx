import 'uplot/dist/uPlot.min.css'
import { type KeyboardEvent, useEffect, useRef, useState } from 'react'
import uPlot from 'uplot'
import { useCell } from '../../cell/useCell.ts'
import { theme } from '../../settings/settings.ts'
import { chartLook, paperLook } from './chartLook.ts'
import { drawPicked, HEIGHT, joined, optionsFor, type Shown } from './chartOptions.ts'
import { type Joined, levelFor, levelsOf } from './levels.ts'
import { panned, type ViewRange, zoomed } from './viewRange.ts'

interface ChartProps extends Shown {
  readonly label: string
  /** The mark that the maker set [min]; null: none. */
  readonly picked: number | null
  /** Where the mark is set, by pointer or by keys [min]. */
  readonly onPick: (at: number) => void
}

/** What a key does to the view; null: nothing. */
const moveOf = (key: string): ((now: ViewRange, all: ViewRange) => ViewRange) | null => {
  const middle = ({ from, to }: ViewRange): number => (from + to) / 2
  switch (key) {
    case 'ArrowLeft':
      return (now, all) => panned(now, -0.1, all)
    case 'ArrowRight':
      return (now, all) => panned(now, 0.1, all)
    case '+':
      return (now, all) => zoomed(now, middle(now), 1 / 1.3, all)
    case '-':
      return (now, all) => zoomed(now, middle(now), 1.3, all)
    case '0':
      return (_, all) => all
    default:
      return null
  }
}

/** Of a sheet of A4 or letter between its margins [px]. */
const PAPER = 660

/** Of what is seen, so far does a key move the mark [1]. */
const MARK_STEP = 1 / 200

/**
 * Readings over time. Wheel: nearer and farther; drag: a stretch; a press sets the mark. By keyboard arrows, plus, minus and
 * 0; with Shift the arrows move the mark.
 */
export const LoggerChart = ({ label, curves, marks, dots, picked, onPick }: ChartProps) => {
  const place = useRef<HTMLDivElement>(null)
  const chart = useRef<uPlot | null>(null)
  const pick = useRef(onPick)
  pick.current = onPick
  const mark = useRef(picked)
  useEffect(() => {
    mark.current = picked
    chart.current?.redraw(false)
  }, [picked])
  const look = useCell(theme)
  const [all, setAll] = useState<ViewRange>({ from: 0, to: 1 })
  // biome-ignore lint/correctness/useExhaustiveDependencies: another theme is another drawing
  useEffect(() => {
    const element = place.current
    if (element === null) return
    const levels = levelsOf(joined(curves) as Joined)
    const [[x]] = levels as readonly [Joined, ...Joined[]]
    const whole = { from: x[0] ?? 0, to: x.at(-1) ?? 1 }
    setAll(whole)
    let level = levelFor(levels, 1)
    /** Finer readings when they can be told apart, coarser ones when they cannot. */
    const refine = (of: uPlot, scale: string): void => {
      if (scale !== 'x') return
      const { min = whole.from, max = whole.to } = of.scales.x ?? {}
      const wanted = levelFor(levels, (max - min) / (whole.to - whole.from || 1))
      if (wanted === level) return
      level = wanted
      queueMicrotask(() => of.setData(levels[level] as unknown as uPlot.AlignedData, false))
    }
    let pens = chartLook()
    const options = optionsFor({ curves, marks, dots }, Math.max(280, element.clientWidth), () => pens)
    const draw = [...(options.hooks?.draw ?? []), (of: uPlot) => drawPicked(of, mark.current, pens)]
    const made = new uPlot(
      { ...options, hooks: { ...options.hooks, draw, setScale: [refine] } },
      levels[level] as unknown as uPlot.AlignedData,
      element,
    )
    chart.current = made
    const rangeNow = (): ViewRange => ({ from: made.scales.x?.min ?? 0, to: made.scales.x?.max ?? 1 })
    const wheel = (event: WheelEvent): void => {
      event.preventDefault()
      const about = made.posToVal(event.offsetX, 'x')
      const next = event.shiftKey
        ? panned(rangeNow(), Math.sign(event.deltaY || event.deltaX) * 0.1, whole)
        : zoomed(rangeNow(), about, event.deltaY > 0 ? 1.2 : 1 / 1.2, whole)
      made.setScale('x', { min: next.from, max: next.to })
    }
    let downAt = 0
    const down = (event: PointerEvent): void => {
      downAt = event.offsetX
    }
    const up = (event: PointerEvent): void => {
      if (Math.abs(event.offsetX - downAt) < 4) pick.current(made.posToVal(event.offsetX, 'x'))
    }
    made.over.addEventListener('wheel', wheel, { passive: false })
    made.over.addEventListener('pointerdown', down)
    made.over.addEventListener('pointerup', up)
    const watch = new ResizeObserver(() =>
      made.setSize({ width: Math.max(280, element.clientWidth), height: HEIGHT }),
    )
    watch.observe(element)
    const onPaper = (): void => {
      pens = paperLook()
      made.setSize({ width: PAPER, height: HEIGHT })
    }
    const onScreen = (): void => {
      pens = chartLook()
      made.setSize({ width: Math.max(280, element.clientWidth), height: HEIGHT })
    }
    addEventListener('beforeprint', onPaper)
    addEventListener('afterprint', onScreen)
    return () => {
      removeEventListener('beforeprint', onPaper)
      removeEventListener('afterprint', onScreen)
      watch.disconnect()
      made.destroy()
      chart.current = null
    }
  }, [curves, marks, dots, look])
  const show = (change: (now: ViewRange) => ViewRange): void => {
    const now = chart.current
    if (now === null) return
    const next = change({ from: now.scales.x?.min ?? all.from, to: now.scales.x?.max ?? all.to })
    now.setScale('x', { min: next.from, max: next.to })
  }
  /** Sets the mark a little on, in the middle of what is seen if it is not there. */
  const moveMark = (by: -1 | 1): void => {
    const { min: from = all.from, max: to = all.to } = chart.current?.scales.x ?? {}
    const seen = picked !== null && picked >= from && picked <= to
    onPick(seen ? picked + by * MARK_STEP * (to - from) : (from + to) / 2)
  }
  const key = (event: KeyboardEvent): void => {
    if (event.shiftKey && (event.key === 'ArrowLeft' || event.key === 'ArrowRight')) {
      event.preventDefault()
      moveMark(event.key === 'ArrowLeft' ? -1 : 1)
      return
    }
    const move = moveOf(event.key)
    if (move === null) return
    event.preventDefault()
    show((now) => move(now, all))
  }
  const button = (name: string, move: string) => (
    <button type="button" onClick={() => show((now) => moveOf(move)?.(now, all) ?? now)}>
      {name}
    </button>
  )
  return (
    <figure className="logger-chart">
      {/* A picture that is worked in: the keys belong to it, not to the buttons below. */}
      <div
        ref={place}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved by keys
        tabIndex={0}
        aria-label={`${label}. Arrow keys move, plus and minus bring nearer, 0 shows all; with Shift, arrow keys move the mark.`}
        onKeyDown={key}
      />
      <p className="trial-actions">
        {button('Earlier', 'ArrowLeft')}
        {button('Later', 'ArrowRight')}
        {button('Nearer', '+')}
        {button('Farther', '-')}
        {button('All of it', '0')}
      </p>
    </figure>
  )
}
