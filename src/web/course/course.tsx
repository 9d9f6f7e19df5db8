import { useEffect, useMemo, useState } from 'react'
import { formatQuantity } from '#basis/text/format.ts'
import { clockText } from '#craft/figure/scale.ts'
import { useCell } from '../cell/useCell.ts'
import { waterAt } from '../section/moment.ts'
import { useSize } from '../section/useSize.ts'
import { figureIn } from '../settings/inUnits.ts'
import { type Units, units } from '../settings/settings.ts'
import type { Live, LiveStove } from '../stove/liveBurn.ts'
import { Curves } from './curves.tsx'
import { Scrubber } from './scrubber.tsx'
import { stripOf } from './strip.ts'
import './course.css'

/** A whole burn is played in this time [ms]. */
const PLAYED_IN = 14_000

const PHASES = { lighting: 'lighting', 'wood gas': 'wood gas', char: 'char glows' } as const

/** What holds at the time that is looked at. */
const nowWords = (live: Live, inUnits: Units): string => {
  const { burn, at, step } = live
  const held = burn?.steps[step]
  if (burn === null || held === undefined) return ''
  const water = waterAt(live)
  const one = inUnits === 'both' ? 'mm' : inUnits
  return [
    `${formatQuantity(Math.round(at / 10) * 10, 'timeAfterLighting')} after lighting`,
    PHASES[held.phase],
    figureIn(held.firepower, 'firepower', one),
    water === null ? null : `1 L at ${figureIn(water, 'waterTemperature', one)}`,
    `wall ${figureIn(held.hottestOuterWall, 'wallTemperature', one)}`,
  ]
    .filter((text) => text !== null)
    .map((text) => text.replaceAll(' ', '\u00a0'))
    .join(' · ')
}

/** Runs the time through the burn until it is over or somebody stops it. */
const usePlay = (stove: LiveStove, until: number) => {
  const [playing, setPlaying] = useState(false)
  useEffect(() => {
    if (!playing) return
    let frame = 0
    let last: number | null = null
    const tick = (now: number): void => {
      const gone = last === null ? 0 : now - last
      last = now
      const next = (stove.at.get() ?? 0) + (gone / PLAYED_IN) * until
      if (next >= until) {
        stove.at.set(until - 1)
        setPlaying(false)
        return
      }
      stove.at.set(next)
      frame = requestAnimationFrame(tick)
    }
    frame = requestAnimationFrame(tick)
    return () => cancelAnimationFrame(frame)
  }, [playing, stove, until])
  return { playing, setPlaying }
}

/** The burn from lighting to the last char as a strip; its scrubber moves the section through it. */
export const Course = ({ stove }: { readonly stove: LiveStove }) => {
  const { place, size, zoom } = useSize()
  const live = useCell(stove.live)
  const before = useCell(stove.before)
  const bands = useCell(stove.bands)
  const chosen = useCell(stove.at)
  const inUnits = useCell(units)
  const burn = live?.burn ?? null
  const band = bands?.key === live?.key ? (bands?.answer?.firepowerOverTime ?? null) : null
  const then = before?.burn ?? null
  const strip = useMemo(
    () =>
      size === null || burn === null ? null : stripOf(size.width, size.height, burn, { before: then, band }),
    [size, burn, then, band],
  )
  const { playing, setPlaying } = usePlay(stove, strip?.until ?? 60)
  const words = live === null ? '' : nowWords(live, inUnits)
  return (
    <section className="course" aria-label="The burn over time">
      <div className="course-head">
        <p className="small">
          {words}
          {chosen === null && words !== '' ? <span className="muted"> · half way down</span> : null}
        </p>
        <div className="course-acts">
          <button
            type="button"
            data-weight="quiet"
            disabled={burn === null}
            onClick={() => {
              if (!playing && chosen !== null && strip !== null && chosen >= strip.until - 2) stove.at.set(0)
              if (!playing && chosen === null) stove.at.set(0)
              setPlaying(!playing)
            }}
          >
            {playing ? 'Stop' : 'Play the burn'}
          </button>
          <button
            type="button"
            data-weight="quiet"
            disabled={chosen === null}
            onClick={() => {
              setPlaying(false)
              stove.at.set(null)
            }}
          >
            Half way down
          </button>
        </div>
      </div>
      <div className="strip-place" ref={place}>
        {strip === null || live === null ? (
          live !== null && burn === null ? (
            <p className="muted">Nothing to show over time: it does not burn.</p>
          ) : null
        ) : (
          // biome-ignore lint/a11y/noSvgWithoutTitle: named by the section round it; a title would show as a tip
          <svg
            width={strip.width * zoom}
            height={strip.height * zoom}
            viewBox={`0 0 ${strip.width} ${strip.height}`}
          >
            <Curves strip={strip} live={live} stove={stove} />
            <Scrubber strip={strip} zoom={zoom} live={live} stove={stove} words={words} />
          </svg>
        )}
      </div>
      <p className="course-key small muted" aria-hidden="true" hidden={strip === null}>
        <span className="key-power" /> firepower
        {band === null ? null : (
          <>
            <span className="key-band" /> 5 to 95 %
          </>
        )}
        <span className="key-water" /> water, 1 L
        {then === null ? null : (
          <>
            <span className="key-before" /> {before?.name}
          </>
        )}
        <span className="key-end">{strip === null ? '' : `over after ${clockText(strip.until)}`}</span>
      </p>
    </section>
  )
}
