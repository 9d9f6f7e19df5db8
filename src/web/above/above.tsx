import { useRef } from 'react'
import { orThrow } from '#basis/problem.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { damperFreeShare } from '#science/draft/damper.ts'
import { placeParts } from '#stove/assembly/place.ts'
import { toggleLeftOut } from '#stove/moves/row.ts'
import { turnPart } from '#stove/moves/whole.ts'
import { wrapBearing } from '#stove/opening/row.ts'
import type { OpenCell } from '../cell/cell.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { units } from '../settings/settings.ts'
import type { Conditions } from '../solve/conditions.ts'
import type { StoveEditor, StoveState } from '../stove/editor.ts'
import { type Selection, sameRef } from '../stove/selection.ts'
import { Holes } from './holes.tsx'
import { at, BAND, MIDDLE, SIDE, WALL, WIND } from './page.ts'
import { arcPath, type PlanRow, planDamper, planHoles, planRows, planWalls } from './plan.ts'
import { Round } from './round.tsx'
import './above.css'

interface AboveProps {
  readonly editor: StoveEditor
  readonly conditions: OpenCell<Conditions>
  readonly selection: Selection
}

/** All that is seen from above, as one word: what only moves up and down is not drawn anew. */
const planKey = ({ stove }: StoveState): string => {
  const placed = orThrow(placeParts(stove))
  return JSON.stringify([
    planWalls(placed),
    planDamper(placed),
    planRows(placed).map(({ ref, row, turned }) => [
      ref,
      row.count,
      row.leftOut,
      row.bearing,
      row.hole,
      turned,
    ]),
    // Whether a damper lies over a row goes by its height.
    placed.some(({ part }) => part.form === 'band') ? placed.map(({ base }) => base) : null,
  ])
}

/** The stove from above: which holes are drilled, how the damper stands, where the wind comes from. */
export const Above = ({ editor, conditions, selection }: AboveProps) => {
  useCellPart(editor.state, planKey)
  const { stove } = editor.state.get()
  const under = useCell(conditions)
  const opened = useCell(selection.opened)
  const pointed = useCell(selection.pointed)
  const inUnits = useCell(units)
  /** Where a hand has the damper that has not let go of it yet [deg]. */
  const turning = useRef<number | null>(null)
  const placed = orThrow(placeParts(stove))
  const rows = planRows(placed)
  const walls = planWalls(placed)
  const damper = planDamper(placed)
  const scale = WALL / Math.max(...walls.map(({ radius }) => radius))
  const chosen =
    rows.find(({ ref }) => sameRef(ref, opened)) ?? rows.find(({ row }) => row.duty === 'intake') ?? rows[0]
  const { wind } = under
  const toggle = (row: PlanRow, place: number): void => {
    const move = toggleLeftOut(editor.state.get().file, row.ref, place)
    if (move !== null) editor.commit(move.label, move.change)
  }
  const setWind = (from: number): void =>
    conditions.set({
      ...under,
      wind: { ...wind, from: Math.round(from), speed: wind.speed === 0 ? 2 : wind.speed },
    })
  const turnDamper = (bearing: number, done: boolean): void => {
    if (damper === null) return
    const move = turnPart(damper.part, bearing)
    if (done) {
      turning.current = null
      editor.commit(move.label, move.change)
      return
    }
    turning.current = bearing
    editor.preview(move.change)
  }
  const settleDamper = (): void => {
    if (turning.current !== null) turnDamper(turning.current, true)
  }
  const free =
    damper === null
      ? null
      : placed
          .filter(({ part }) => part.form === 'can')
          .flatMap((host) =>
            [...host.part.openings.values()].flatMap((row) => {
              const band = placed.find(({ name }) => name === damper.part)
              if (row.kind !== 'row' || band === undefined) return []
              const share = damperFreeShare(row, host, band)
              return share === null ? [] : [share]
            }),
          )
          .at(0)
  const openWords = free === undefined || free === null ? '' : `${Math.round(100 * free)} % open`
  const arrow = at(WIND, wind.from)
  const tip = at(BAND + 8, wind.from)
  return (
    <section className="above" aria-label="From above">
      <h2>From above</h2>
      {/* biome-ignore lint/a11y/useSemanticElements: a picture with handles in it is no set of fields */}
      <svg
        viewBox={`0 0 ${SIDE} ${SIDE}`}
        role="group"
        aria-label="The stove from above, front at the bottom"
      >
        {walls.map(({ part, radius }) => (
          <circle key={part} className="above-wall" cx={MIDDLE.x} cy={MIDDLE.y} r={radius * scale} />
        ))}
        <path className="above-front" d={`M${MIDDLE.x} ${MIDDLE.y + 20}v22m-5 -6l5 6l5 -6`} />
        <text className="above-words" x={MIDDLE.x} y={MIDDLE.y + 14} textAnchor="middle">
          front
        </text>
        {damper === null ? null : (
          <Round
            name="Damper, turned"
            words={`${Math.round(damper.turned)}°, ${openWords}`}
            bearing={damper.turned}
            small={1}
            large={15}
            className="above-damper"
            onTurn={turnDamper}
            onAbandon={editor.abandon}
          >
            <circle className="above-band-reach" cx={MIDDLE.x} cy={MIDDLE.y} r={BAND} />
            <circle className="above-band" cx={MIDDLE.x} cy={MIDDLE.y} r={BAND} />
            {damper.windows.map(({ place, bearing, half }) => (
              <path
                key={place}
                className="above-window"
                d={arcPath(MIDDLE, BAND, bearing - half, bearing + half)}
              />
            ))}
            <circle
              className="above-mark"
              cx={at(BAND, damper.turned).x}
              cy={at(BAND, damper.turned).y}
              r={5}
            />
          </Round>
        )}
        {rows
          .filter(({ ref }) => !sameRef(ref, chosen?.ref ?? null))
          .map((row) =>
            planHoles(row)
              .filter(({ drilled }) => drilled)
              .map(({ place, bearing }) => {
                const { x, y } = at(row.radius * scale, bearing)
                return (
                  <circle
                    key={`${row.ref.part} ${row.ref.opening} ${place}`}
                    className="above-other"
                    data-pointed={sameRef(row.ref, pointed)}
                    cx={x}
                    cy={y}
                    r={2.4}
                  />
                )
              }),
          )}
        {chosen === undefined ? null : (
          <Holes row={chosen} scale={scale} toggle={(place) => toggle(chosen, place)} />
        )}
        <Round
          name="Wind, where it comes from"
          words={wind.speed === 0 ? 'calm' : `${Math.round(wind.from)}° from the front`}
          bearing={wind.from}
          small={5}
          large={45}
          className="above-wind"
          onTurn={setWind}
          onAbandon={() => undefined}
        >
          <circle className="above-reach" cx={arrow.x} cy={arrow.y} r={13} />
          <path
            className="above-arrow"
            data-calm={wind.speed === 0}
            d={`M${arrow.x} ${arrow.y}L${tip.x} ${tip.y}`}
            markerEnd="url(#wind-head)"
          />
          <circle className="above-wind-knob" cx={arrow.x} cy={arrow.y} r={7} />
        </Round>
        <text className="above-words" x={2} y={SIDE - 20}>
          wind
        </text>
        <text className="above-words" x={2} y={SIDE - 4}>
          {wind.speed === 0
            ? 'calm'
            : formatQuantity(wind.speed, 'windSpeed', inUnits === 'in' ? 'mph' : 'm/s')}
        </text>
        <defs>
          <marker
            id="wind-head"
            viewBox="0 0 10 10"
            refX="8"
            refY="5"
            markerWidth="6"
            markerHeight="6"
            orient="auto"
          >
            <path className="above-head" d="M0 0L10 5L0 10Z" />
          </marker>
        </defs>
      </svg>
      <label className="above-choice">
        <span className="small muted">Holes to leave out</span>
        <select
          value={chosen === undefined ? '' : `${chosen.ref.part}\n${chosen.ref.opening}`}
          onChange={(event) => {
            const [part = '', opening = ''] = event.target.value.split('\n')
            selection.open({ part, opening })
          }}
        >
          {rows.map(({ ref, row }) => (
            <option key={`${ref.part} ${ref.opening}`} value={`${ref.part}\n${ref.opening}`}>
              {ref.opening}, {row.count - row.leftOut.length} of {row.count}
            </option>
          ))}
        </select>
      </label>
      {damper === null ? null : (
        <label className="above-choice">
          <span className="small muted">
            Damper <output>{openWords}</output>
          </span>
          <input
            type="range"
            aria-label="Damper"
            min={0}
            max={360}
            step={1}
            value={Math.round(wrapBearing(damper.turned))}
            aria-valuetext={`${Math.round(damper.turned)}°, ${openWords}`}
            onChange={(event) => turnDamper(Number(event.target.value), false)}
            onPointerUp={settleDamper}
            onKeyUp={settleDamper}
            onBlur={settleDamper}
          />
        </label>
      )}
    </section>
  )
}
