import './space.css'
import { type ReactNode, useEffect, useId, useRef, useState } from 'react'
import type { Stove } from '#stove/model.ts'
import { dim } from '../bench/dim.ts'
import { useCell } from '../cell/useCell.ts'
import { ScopedSvg } from '../plan/scopedSvg.tsx'
import type { SpaceWish } from '../plan/worker/job.ts'
import { theme } from '../settings/settings.ts'
import type { StoveEditor } from '../stove/editor.ts'
import { sameRef } from '../stove/selection.ts'
import { type Aim, listenToGestures } from './gestures.ts'
import { bearingOf, FIRST_ORBIT, type Orbit, turnedBy, zoomedBy } from './orbit.ts'
import { type Chosen, openStage, type Stage } from './stage.ts'
import { useDrawn, useScene, useSpaceHand } from './useScene.ts'

const ARRANGEMENTS: readonly (readonly [SpaceWish['arrangement'], string])[] = [
  ['whole', 'Whole'],
  ['cut', 'Cut open'],
  ['exploded', 'Taken apart'],
  ['packed', 'Packed'],
]

export interface SpaceProps {
  readonly editor: StoveEditor
  /** Opening that stands out, or null. */
  readonly chosen: Chosen | null
  /** A hole was pressed, or what is no hole; `side` is where there is room beside it. */
  readonly onPick: (picked: Chosen | null, side: 'left' | 'right') => void
  /** A mouse is over a hole, or over none. */
  readonly onPoint?: (pointed: Chosen | null) => void
  /** What can be done with the opening that was found in the list. */
  readonly act: { readonly words: string; readonly go: (chosen: Chosen) => void }
  readonly first?: SpaceWish['arrangement']
  /** Lies over the picture, at one side of it. */
  readonly over?: { readonly side: 'left' | 'right'; readonly content: ReactNode } | null
}

interface PointOutProps {
  readonly stove: Stove
  readonly chosen: Chosen | null
  readonly onChoose: (chosen: Chosen | null) => void
  readonly act: SpaceProps['act']
}

/** A list of every opening, to find one in the picture without a pointer. */
const PointOut = ({ stove: { parts }, chosen, onChoose, act }: PointOutProps) => {
  const all = [...parts].flatMap(([part, { openings }]) =>
    [...openings.keys()].map((opening) => ({ part, opening })),
  )
  const at = all.findIndex((one) => sameRef(one, chosen))
  return (
    <div className="space-point">
      <label>
        Point out
        <select value={at} onChange={(event) => onChoose(all[Number(event.target.value)] ?? null)}>
          <option value={-1}>nothing</option>
          {all.map(({ part, opening }, i) => (
            <option key={`${part}.${opening}`} value={i}>
              {part}: {opening}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        data-weight="quiet"
        {...dim(chosen === null, () => {
          if (chosen !== null) act.go(chosen)
        })}
      >
        {act.words}
      </button>
    </div>
  )
}

/** The stove in space: the same solids as in its files, with every opening where the section has it. */
export const Space = ({
  editor,
  chosen: given,
  onPick,
  onPoint,
  act,
  first = 'whole',
  over = null,
}: SpaceProps) => {
  useSpaceHand()
  const { stove } = useCell(editor.state)
  const dark = useCell(theme) === 'dark'
  const [arrangement, setArrangement] = useState(first)
  const [hasStage, setHasStage] = useState(true)
  const held = useRef<HTMLDivElement>(null)
  const lid = useRef<HTMLDivElement>(null)
  const stage = useRef<Stage | null>(null)
  const orbit = useRef<Orbit>(FIRST_ORBIT)
  const [bearing, setBearing] = useState(bearingOf(FIRST_ORBIT))
  const help = useId()
  const [listed, setListed] = useState<Chosen | null>(null)
  const chosen = given ?? listed
  const [onHole, setOnHole] = useState(false)

  const look = (next: Orbit): void => {
    orbit.current = next
    stage.current?.look(next)
    setBearing(bearingOf(next))
  }
  const turn = useRef(look)
  turn.current = look
  const presses = useRef({ press: (_: Aim): void => {}, hover: (_: Aim | null): void => {} })
  presses.current = {
    press: ({ x, y, slack }) => {
      const picked = stage.current?.openingAt(x, y, slack) ?? null
      setListed(picked)
      onPick(picked, x < (held.current?.clientWidth ?? 0) / 2 ? 'right' : 'left')
    },
    hover: (aim) => {
      const found = aim === null ? null : (stage.current?.openingAt(aim.x, aim.y, aim.slack) ?? null)
      setOnHole(found !== null)
      onPoint?.(found)
    },
  }

  useEffect(() => {
    const frame = held.current
    if (!hasStage || frame === null) return
    // Made anew with every stage: a canvas that has given its context back gets no second one.
    const canvas = document.createElement('canvas')
    canvas.className = 'space-canvas'
    const opened = openStage(canvas)
    if (opened === null) {
      setHasStage(false)
      return
    }
    frame.append(canvas)
    stage.current = opened
    opened.look(orbit.current)
    const measure = (): void => opened.resize(frame.clientWidth, frame.clientHeight)
    const watch = new ResizeObserver(measure)
    watch.observe(frame)
    measure()
    let waiting = 0
    const deaf = listenToGestures(
      frame,
      () => orbit.current,
      (next) => turn.current(next),
      {
        press: (aim) => presses.current.press(aim),
        // A mouse moves more often than a picture is drawn.
        hover: (aim) => {
          cancelAnimationFrame(waiting)
          waiting = requestAnimationFrame(() => presses.current.hover(aim))
        },
      },
    )
    return () => {
      deaf()
      cancelAnimationFrame(waiting)
      watch.disconnect()
      opened.end()
      canvas.remove()
      stage.current = null
    }
  }, [hasStage])

  const scene = useScene(stove, arrangement, hasStage)
  const drawn = useDrawn(stove, arrangement, dark, !hasStage)
  const { shown: solids } = scene
  useEffect(() => {
    stage.current?.dress(dark)
  }, [dark])
  useEffect(() => {
    if (solids !== null) stage.current?.show(solids)
  }, [solids])
  const side = over?.side ?? null
  useEffect(() => {
    const wide = side === null ? 0 : (lid.current?.offsetWidth ?? 0)
    stage.current?.leaveFree(side === 'left' ? wide : 0, side === 'right' ? wide : 0)
  }, [side])
  const [part, opening] = [chosen?.part ?? null, chosen?.opening ?? null]
  useEffect(() => {
    stage.current?.choose(part === null || opening === null ? null : { part, opening })
  }, [part, opening])

  const { busy, sentence } = hasStage ? scene : drawn
  const words = ARRANGEMENTS.find(([key]) => key === arrangement)?.[1] ?? ''
  return (
    <figure className="space" data-busy={busy}>
      <fieldset className="space-choice">
        <legend className="unseen">How the stove is shown</legend>
        {ARRANGEMENTS.map(([key, label]) => (
          <button
            key={key}
            type="button"
            aria-pressed={arrangement === key}
            onClick={() => setArrangement(key)}
          >
            {label}
          </button>
        ))}
      </fieldset>
      <div className="space-frame">
        {hasStage ? (
          <div
            ref={held}
            className="space-held"
            data-over={onHole}
            // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys turn it
            tabIndex={0}
            role="application"
            aria-label={`${stove.name} in space, ${words.toLowerCase()}, seen from ${bearing}° clockwise of its front`}
            aria-describedby={help}
          />
        ) : drawn.shown === null ? (
          <div className="space-drawn" />
        ) : (
          <ScopedSvg svg={drawn.shown} className="space-drawn" />
        )}
        <p className="space-said" role="status">
          {sentence ??
            (busy && (hasStage ? solids : drawn.shown) === null ? 'Making the parts as solids …' : '')}
        </p>
        {over === null ? null : (
          <div ref={lid} className="space-over" data-side={over.side}>
            {over.content}
          </div>
        )}
      </div>
      {hasStage ? (
        <div className="space-foot">
          <fieldset className="space-turn">
            <legend className="unseen">Turn the stove</legend>
            <button
              type="button"
              aria-label="Turn left"
              onClick={() => look(turnedBy(orbit.current, { turn: -0.35 }))}
            >
              ↺
            </button>
            <button
              type="button"
              aria-label="Turn right"
              onClick={() => look(turnedBy(orbit.current, { turn: 0.35 }))}
            >
              ↻
            </button>
            <button
              type="button"
              aria-label="Look from higher"
              onClick={() => look(turnedBy(orbit.current, { tilt: 0.25 }))}
            >
              ↑
            </button>
            <button
              type="button"
              aria-label="Look from lower"
              onClick={() => look(turnedBy(orbit.current, { tilt: -0.25 }))}
            >
              ↓
            </button>
            <button type="button" aria-label="Nearer" onClick={() => look(zoomedBy(orbit.current, 1.25))}>
              +
            </button>
            <button type="button" aria-label="Farther" onClick={() => look(zoomedBy(orbit.current, 0.8))}>
              −
            </button>
            <button type="button" aria-label="From the front" onClick={() => look(FIRST_ORBIT)}>
              Front
            </button>
          </fieldset>
          <PointOut stove={stove} chosen={chosen} onChoose={setListed} act={act} />
          <figcaption className="muted small" id={help}>
            Drag to turn, press a hole to change it. Two fingers or the wheel come nearer; arrow keys, + and
            −, Home.
          </figcaption>
        </div>
      ) : (
        <figcaption className="muted small">
          Drawn: this device shows nothing in space (it has no WebGL).
        </figcaption>
      )}
    </figure>
  )
}
