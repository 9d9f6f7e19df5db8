import { at } from './page.ts'
import { type PlanRow, planHoles } from './plan.ts'

/** Every place of one row: a press drills it or leaves it out. */
export const Holes = ({
  row,
  scale,
  toggle,
}: {
  readonly row: PlanRow
  readonly scale: number
  readonly toggle: (place: number) => void
}) => {
  const radius = row.radius * scale
  return planHoles(row).map(({ place, bearing, drilled, half }) => {
    const { x, y } = at(radius, bearing)
    const size = Math.max(5, Math.min(11, ((half * Math.PI) / 180) * radius))
    return (
      // biome-ignore lint/a11y/useSemanticElements: a hole in a drawing cannot be a field of a form
      <g
        key={place}
        className="above-hole"
        role="checkbox"
        tabIndex={0}
        aria-checked={drilled}
        aria-label={`${row.ref.opening}, hole ${place} at ${Math.round(bearing)}°, drilled`}
        transform={`translate(${x} ${y})`}
        onClick={() => toggle(place)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' && event.key !== ' ') return
          event.preventDefault()
          toggle(place)
        }}
      >
        <circle className="above-reach" r={Math.max(14, size + 3)} />
        <circle className="above-dot" r={size} />
        {drilled ? null : <path className="above-cross" d={`M${-size} ${-size}L${size} ${size}`} />}
      </g>
    )
  })
}
