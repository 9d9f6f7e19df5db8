import { useState } from 'react'
import { problemSentence } from '#basis/problem.ts'
import type { QuantityKey } from '#basis/quantities.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { readQuantity } from '#basis/text/read.ts'
import { fuelTable } from '#science/fuel/table.ts'
import type { OpenCell } from '../cell/cell.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { fuelChoice, fuelChoices } from '../fuel/fuelChoices.ts'
import { figureIn, lengthIn } from '../settings/inUnits.ts'
import { type Units, units } from '../settings/settings.ts'
import { type Conditions, usualConditions } from '../solve/conditions.ts'
import type { StoveEditor } from './editor.ts'
import './conditions.css'

interface QuantityFieldProps {
  readonly name: string
  readonly quantity: QuantityKey
  readonly text: string
  readonly hint?: string | undefined
  readonly onValue: (value: number) => void
}

/** A quantity written with its unit, as a maker writes it; a fault is said where it was written. */
const QuantityField = ({ name, quantity, text, hint, onValue }: QuantityFieldProps) => {
  const [typed, setTyped] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const settle = (): void => {
    if (typed === null) return
    const read = readQuantity(typed, name.toLowerCase(), quantity)
    if (!read.ok) {
      setFault(read.problems.map(problemSentence).join(' '))
      return
    }
    setTyped(null)
    setFault(null)
    onValue(read.value)
  }
  return (
    <label className="condition">
      <span>{name}</span>
      <input
        value={typed ?? text}
        aria-invalid={fault !== null}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={settle}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle()
          if (event.key !== 'Escape') return
          setTyped(null)
          setFault(null)
        }}
      />
      {fault !== null ? (
        <span className="condition-fault small" role="alert">
          {fault}
        </span>
      ) : hint === undefined ? null : (
        <span className="small muted">{hint}</span>
      )}
    </label>
  )
}

const short = (inUnits: Units): Units => (inUnits === 'both' ? 'mm' : inUnits)

/** What the stove is burnt with and in: no part of the stove, and not kept with it. */
export const ConditionsPanel = ({
  editor,
  conditions,
}: {
  readonly editor: StoveEditor
  readonly conditions: OpenCell<Conditions>
}) => {
  useCellPart(editor.state, ({ stove: { fuel, potDiameter } }) => JSON.stringify([fuel, potDiameter]))
  const { stove } = editor.state.get()
  const now = useCell(conditions)
  const inUnits = short(useCell(units))
  const set = (part: Partial<Conditions>): void => conditions.set({ ...now, ...part })
  const own = fuelChoice(stove.fuel.kind)?.name ?? stove.fuel.kind
  const fuel = now.fuel === null ? fuelTable.get(stove.fuel.kind) : fuelTable.get(now.fuel)
  const usual = now.fuel === null ? (stove.fuel.moisture ?? fuel?.moisture ?? 0) : (fuel?.moisture ?? 0)
  const same = JSON.stringify(now) === JSON.stringify(usualConditions)
  return (
    <section className="conditions" aria-label="Burnt with and in">
      <h2>Burnt with and in</h2>
      <label className="condition condition-fuel">
        <span>Fuel</span>
        <select
          value={now.fuel ?? ''}
          onChange={(event) =>
            set({ fuel: event.target.value === '' ? null : event.target.value, moisture: null })
          }
        >
          <option value="">as it says: {stove.fuel.own?.name ?? own}</option>
          {fuelChoices.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <QuantityField
        name="Water in the fuel"
        quantity="fuelMoisture"
        text={formatQuantity(now.moisture ?? usual, 'fuelMoisture')}
        onValue={(moisture) => set({ moisture })}
      />
      <QuantityField
        name="Air"
        quantity="ambientTemperature"
        text={figureIn(now.temperature, 'ambientTemperature', inUnits)}
        onValue={(temperature) => set({ temperature })}
      />
      <QuantityField
        name="Above the sea"
        quantity="altitude"
        text={formatQuantity(now.altitude, 'altitude', inUnits === 'in' ? 'ft' : 'm')}
        onValue={(altitude) => set({ altitude })}
      />
      <QuantityField
        name="Wind"
        quantity="windSpeed"
        text={formatQuantity(now.wind.speed, 'windSpeed', inUnits === 'in' ? 'mph' : 'm/s')}
        onValue={(speed) => set({ wind: { ...now.wind, speed } })}
      />
      <QuantityField
        name="Wind from"
        quantity="bearing"
        text={formatQuantity(now.wind.from, 'bearing')}
        onValue={(from) => set({ wind: { ...now.wind, from: ((from % 360) + 360) % 360 } })}
      />
      {stove.potDiameter === null ? null : (
        <QuantityField
          name="Pot across"
          quantity="potDiameter"
          text={lengthIn(now.potDiameter ?? stove.potDiameter, inUnits)}
          onValue={(potDiameter) => set({ potDiameter })}
        />
      )}
      <div className="condition-ticks">
        <label>
          <input
            type="checkbox"
            checked={now.wind.screened === true}
            onChange={(event) => {
              const { screened: _, ...wind } = now.wind
              set({ wind: event.target.checked ? { ...wind, screened: true } : wind })
            }}
          />
          behind a screen
        </label>
        <label>
          <input type="checkbox" checked={now.lid} onChange={(event) => set({ lid: event.target.checked })} />
          lid on the pot
        </label>
        <label>
          <input type="checkbox" checked={now.hot} onChange={(event) => set({ hot: event.target.checked })} />
          second batch, stove still hot
        </label>
        <label>
          <input
            type="checkbox"
            checked={!now.burntOff}
            onChange={(event) => set({ burntOff: !event.target.checked })}
          />
          tin still bright, first fire
        </label>
      </div>
      <button
        type="button"
        data-weight="quiet"
        disabled={same}
        onClick={() => conditions.set(usualConditions)}
      >
        A calm, mild day again
      </button>
    </section>
  )
}
