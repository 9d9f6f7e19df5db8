import { useId } from 'react'
import type { OpenCell } from '../cell/cell.ts'
import { useCell } from '../cell/useCell.ts'
import './settings.css'

/** A few words of which one counts. */
export const Choice = <T extends string>({
  legend,
  cell,
  options,
}: {
  readonly legend: string
  readonly cell: OpenCell<T>
  readonly options: readonly { readonly value: T; readonly name: string }[]
}) => {
  const value = useCell(cell)
  const group = useId()
  return (
    <fieldset className="choice">
      <legend>{legend}</legend>
      <div>
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={group}
              checked={value === option.value}
              onChange={() => cell.set(option.value)}
            />
            <span>{option.name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
