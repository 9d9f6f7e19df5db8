import { useMemo } from 'react'
import type { Bit } from '#stove/model.ts'
import { drillWith } from '#stove/moves/hole.ts'
import type { Move, OpeningRef } from '#stove/moves/move.ts'
import { useCell } from '../cell/useCell.ts'
import { shelfItems } from '../shelf/items.ts'
import { shelfOf } from '../shelf/shelfOf.ts'
import { attempt } from '../stove/attempt.ts'
import type { StoveEditor } from '../stove/editor.ts'
import { bitChoice } from './bits.ts'
import { Stepper } from './stepper.tsx'

interface BitFieldProps {
  readonly editor: StoveEditor
  readonly opening: OpeningRef
  readonly name: string
  /** [m] */
  readonly diameter: number
  readonly tryMove: (move: Move | null) => void
}

const useOwnedBits = (): { readonly bits: readonly Bit[]; readonly loading: boolean } => {
  const { items, loading } = useCell(shelfItems)
  return useMemo(
    () => ({ bits: shelfOf(items.filter(({ kind }) => kind === 'bit')).bits, loading }),
    [items, loading],
  )
}

/** The bit a row is drilled with: stepped through what the maker owns, and any other by its list or its name. */
export const BitField = ({ editor, opening: ref, name, diameter, tryMove }: BitFieldProps) => {
  const { bits, loading } = useOwnedBits()
  const { less, more, isOwned, owned, usual } = bitChoice(name, diameter, bits)
  const all = [...owned, ...usual]
  const at = all.findIndex((bit) => Math.abs(bit.diameter - diameter) < 1e-9)
  const note = isOwned
    ? 'on your shelf'
    : loading
      ? 'looking at the shelf …'
      : owned.length === 0
        ? 'no bits on the shelf yet'
        : 'not on your shelf'
  return (
    <>
      <Stepper
        name="Bit"
        text={name}
        note={note}
        onLess={less === null ? null : () => tryMove(drillWith(ref, less))}
        onMore={more === null ? null : () => tryMove(drillWith(ref, more))}
        onText={(text) =>
          attempt(editor, drillWith(ref, { name: text.trim(), diameter: diameter as Bit['diameter'] }))
        }
      />
      <label className="bit-list">
        Of all bits
        <select
          value={at}
          onChange={(event) => {
            const bit = all[Number(event.target.value)]
            if (bit !== undefined) tryMove(drillWith(ref, bit))
          }}
        >
          {at < 0 ? <option value={-1}>{name}</option> : null}
          {owned.length === 0 ? null : (
            <optgroup label="On your shelf">
              {owned.map((bit, i) => (
                <option key={bit.name} value={i}>
                  {bit.name}
                </option>
              ))}
            </optgroup>
          )}
          <optgroup label={owned.length === 0 ? 'Usual sizes' : 'Usual sizes, not on your shelf'}>
            {usual.map((bit, i) => (
              <option key={bit.name} value={owned.length + i}>
                {bit.name}
              </option>
            ))}
          </optgroup>
        </select>
      </label>
    </>
  )
}
