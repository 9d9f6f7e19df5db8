import './space.css'
import { useEffect, useId, useRef, useState } from 'react'
import type { Stove } from '#stove/model.ts'
import { useCell } from '../cell/useCell.ts'
import { ScopedSvg } from '../plan/scopedSvg.tsx'
import type { SpaceWish } from '../plan/worker/job.ts'
import { theme } from '../settings/settings.ts'
import type { StoveEditor } from '../stove/editor.ts'
import { listenToGestures } from './gestures.ts'
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
  /** Opening that stands out, or null; left out, it is chosen here from a list. */
  readonly chosen?: Chosen | null
  readonly first?: SpaceWish['arrangement']
}

interface PointOutProps {
  readonly stove: Stove
  readonly chosen: Chosen | null
  readonly onChoose: (chosen: Chosen | null) => void
}

/** A list of every opening, to find one in the picture. */
const PointOut = ({ stove: { parts }, chosen, onChoose }: PointOutProps) => {
  const all = [...parts].flatMap(([part, { openings }]) =>
    [...openings.keys()].map((opening) => ({ part, opening })),
  )
  const at = all.findIndex(({ part, opening }) => part === chosen?.part && opening === chosen.opening)
  return (
    <label className="space-point">
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
  )
}

/** The stove in space: the same solids as in its files, with every opening where the section has it. */
export const Space = ({ editor, chosen: given, first = 'whole' }: SpaceProps) => {
  useSpaceHand()
  const { stove } = useCell(editor.state)
  const dark = useCell(theme) === 'dark'
  const [arrangement, setArrangement] = useState(first)
  const [hasStage, setHasStage] = useState(true)
  const held = useRef<HTMLDivElement>(null)
  const stage = useRef<Stage | null>(null)
  const orbit = useRef<Orbit>(FIRST_ORBIT)
  const [bearing, setBearing] = useState(bearingOf(FIRST_ORBIT))
  const help = useId()
  const [pointed, setPointed] = useState<Chosen | null>(null)
  const chosen = given === undefined ? pointed : given

  const look = (next: Orbit): void => {
    orbit.current = next
    stage.current?.look(next)
    setBearing(bearingOf(next))
  }
  const turn = useRef(look)
  turn.current = look

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
    const deaf = listenToGestures(
      frame,
      () => orbit.current,
      (next) => turn.current(next),
    )
    return () => {
      deaf()
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
        {given === undefined && hasStage ? (
          <PointOut stove={stove} chosen={chosen} onChoose={setPointed} />
        ) : null}
      </fieldset>
      {hasStage ? (
        <>
          <div
            ref={held}
            className="space-held"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys turn it
            tabIndex={0}
            role="application"
            aria-label={`${stove.name} in space, ${words.toLowerCase()}, seen from ${bearing}° clockwise of its front`}
            aria-describedby={help}
          />
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
            <button type="button" onClick={() => look(FIRST_ORBIT)}>
              From the front
            </button>
          </fieldset>
          <figcaption className="muted small" id={help}>
            Drag to turn; two fingers or the wheel to come nearer; arrow keys, + and −, Home.
          </figcaption>
        </>
      ) : (
        <>
          {drawn.shown === null ? (
            <div className="space-drawn" />
          ) : (
            <ScopedSvg svg={drawn.shown} className="space-drawn" />
          )}
          <figcaption className="muted small">
            Drawn: this device shows nothing in space (it has no WebGL).
          </figcaption>
        </>
      )}
      <p className="space-said" role="status">
        {sentence ??
          (busy && (hasStage ? solids : drawn.shown) === null ? 'Making the parts as solids …' : '')}
      </p>
    </figure>
  )
}
