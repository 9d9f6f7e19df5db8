import { useState } from 'react'
import { METRIC_BITS } from '#stove/bit/series.ts'
import type { Bit, Duty } from '#stove/model.ts'
import { addRow } from '#stove/moves/rows.ts'
import { useCellPart } from '../cell/useCell.ts'
import { attempt } from './attempt.ts'
import type { StoveEditor } from './editor.ts'
import type { Selection } from './selection.ts'

/** The bit a new row begins with: it can be changed in place at once. */
const FIRST_BIT = METRIC_BITS.find(({ name }) => name === '6 mm') as Bit

const DUTIES: readonly Duty[] = ['intake', 'primary', 'secondary', 'tertiary', 'outlet']

/** Adds a ring of holes to a can, where it has most room. */
export const AddRow = ({
  editor,
  selection,
}: {
  readonly editor: StoveEditor
  readonly selection: Selection
}) => {
  const cans = useCellPart(editor.state, ({ stove }) =>
    [...stove.parts].flatMap(([name, { form }]) => (form === 'can' ? [name] : [])).join('\n'),
  ).split('\n')
  const [part, setPart] = useState(cans[0] ?? '')
  const [duty, setDuty] = useState<Duty>('secondary')
  const [fault, setFault] = useState<string | null>(null)
  const chosen = cans.includes(part) ? part : (cans[0] ?? '')
  return (
    <form
      className="add-row"
      onSubmit={(event) => {
        event.preventDefault()
        const { stove, file } = editor.state.get()
        const { move, ref } = addRow(stove, file, chosen, duty, FIRST_BIT)
        const why = attempt(editor, move)
        setFault(why)
        if (why === null) selection.open(ref)
      }}
    >
      <label>
        <span className="small muted">New row in</span>
        <select value={chosen} onChange={(event) => setPart(event.target.value)}>
          {cans.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </label>
      <label>
        <span className="small muted">for</span>
        <select value={duty} onChange={(event) => setDuty(event.target.value as Duty)}>
          {DUTIES.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
      <button type="submit">Add the row</button>
      {fault === null ? null : (
        <p className="small add-row-fault" role="alert">
          {fault}
        </p>
      )}
    </form>
  )
}
