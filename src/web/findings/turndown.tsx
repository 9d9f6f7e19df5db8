import { multiples, roundStep, scaleOf } from '#craft/figure/scale.ts'
import { turnPart } from '#stove/moves/whole.ts'
import { wrapBearing } from '#stove/opening/row.ts'
import { COURSES } from '../answers/words.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { powerPer, powerUnit } from '../course/strip.ts'
import { useSize } from '../section/useSize.ts'
import { figureIn } from '../settings/inUnits.ts'
import { units } from '../settings/settings.ts'
import type { StoveEditor } from '../stove/editor.ts'
import type { LiveStove } from '../stove/liveBurn.ts'
import './findings.css'

const [LEFT, RIGHT, TOP, FOOT] = [38, 12, 24, 26]
const THOUSAND = 1000

/** Steady firepower over the damper, turned through one pitch of its windows. */
export const TurndownCurve = ({
  editor,
  stove,
}: {
  readonly editor: StoveEditor
  readonly stove: LiveStove
}) => {
  const { place, size, zoom } = useSize()
  const curve = useCell(stove.turndown)
  const chosen = useCell(units)
  const inUnits = chosen === 'both' ? 'mm' : chosen
  const damper = useCellPart(
    editor.state,
    ({ stove: { parts } }) => [...parts].find(([, { role }]) => role === 'damper')?.[0],
  )
  const standing = useCellPart(
    editor.state,
    ({ stove: { assembly } }) => assembly.find(({ part }) => part === damper)?.turned ?? 0,
  )
  const settings = [...(curve?.settings ?? [])].sort((a, b) => a.free - b.free)
  const highest = Math.max(500, ...settings.map(({ firepower }) => firepower ?? 0))
  const width = size?.width ?? 320
  const height = 170
  const x = scaleOf(0, 1, LEFT, width - RIGHT)
  const y = scaleOf(0, highest * 1.1, height - FOOT, TOP)
  const per = powerPer(inUnits)
  const burning = settings.flatMap(({ free, firepower, regime }) =>
    firepower === null ? [] : [{ free, firepower, regime }],
  )
  return (
    <section className="turndown" aria-label="Turndown">
      <h2>Turning it down</h2>
      {damper === undefined ? (
        <p className="muted">
          This stove has no damper: it burns at its own pace. A band with windows round the shell would turn
          it down.
        </p>
      ) : (
        <>
          <p className="muted small">
            {curve === null
              ? 'Worked out when your hand rests.'
              : curve.ratio === null
                ? 'No setting of the damper burns without smouldering.'
                : `Highest over lowest steady firepower: ${curve.ratio.toFixed(1)}. Front half way down.`}
          </p>
          <div ref={place} className="turndown-place">
            {curve === null || size === null ? null : (
              <svg
                width={width * zoom}
                height={height * zoom}
                viewBox={`0 0 ${width} ${height}`}
                role="img"
                aria-label="Firepower over how far the damper is open"
              >
                {[0, 0.5, 1].map((share) => (
                  <g key={share}>
                    <path className="strip-grid" d={`M${x.at(share)} ${height - FOOT}v5`} />
                    <text
                      className="strip-tick"
                      x={x.at(share)}
                      y={height - 6}
                      textAnchor={share === 0 ? 'start' : share === 1 ? 'end' : 'middle'}
                    >
                      {share === 0 ? 'shut' : share === 1 ? 'open' : 'half open'}
                    </text>
                  </g>
                ))}
                <text className="strip-tick" x={LEFT - 6} y={12} textAnchor="end">
                  {powerUnit(inUnits)}
                </text>
                {multiples(roundStep(highest * per, 2), 0, highest * per * 1.1).map((power) => (
                  <g key={power}>
                    <path className="strip-grid" d={`M${LEFT} ${y.at(power / per)}H${width - RIGHT}`} />
                    <text className="strip-tick" x={LEFT - 9} y={y.at(power / per) + 4} textAnchor="end">
                      {Number((power / THOUSAND).toPrecision(3))}
                    </text>
                  </g>
                ))}
                <path
                  className="strip-power"
                  d={
                    burning.length === 0
                      ? 'M0 0'
                      : `M${burning.map(({ free, firepower }) => `${x.at(free)} ${y.at(firepower)}`).join('L')}`
                  }
                />
                {settings.map(({ turned, free, firepower, regime }) => (
                  <circle
                    key={turned}
                    className="turndown-dot"
                    data-regime={regime ?? 'out'}
                    data-here={Math.abs(wrapBearing(turned - standing + 180) - 180) < 1}
                    cx={x.at(free)}
                    cy={y.at(firepower ?? 0)}
                    r={Math.abs(wrapBearing(turned - standing + 180) - 180) < 1 ? 6 : 4}
                  />
                ))}
              </svg>
            )}
          </div>
          {curve === null ? null : (
            <p className="turndown-key small muted" aria-hidden="true">
              <span data-regime="clean" /> burns clean
              <span /> does not
              <span data-here="true" /> as it stands
            </p>
          )}
          {curve === null ? null : (
            <ul className="turndown-list small">
              {settings
                .filter(({ free }, i) => i === 0 || Math.abs(free - (settings[i - 1]?.free ?? -1)) > 0.02)
                .map(({ turned, free, firepower, regime }) => (
                  <li key={turned}>
                    <button
                      type="button"
                      data-weight="quiet"
                      onClick={() => {
                        const move = turnPart(damper, turned)
                        editor.commit(move.label, move.change)
                      }}
                    >
                      <span>{Math.round(100 * free)} % open</span>
                      <span>
                        {firepower === null ? 'goes out' : figureIn(firepower, 'firepower', inUnits)}
                      </span>
                      <span className="muted">
                        {regime === null ? '' : COURSES[regime].name.toLowerCase()}
                      </span>
                    </button>
                  </li>
                ))}
            </ul>
          )}
        </>
      )}
    </section>
  )
}
