import { useState } from 'react'
import { useCell } from '../cell/useCell.ts'
import { go } from '../routes/here.ts'
import { documents } from '../workshop/workshop.ts'
import { layInSeries, SERIES_BEGINS } from './demoSeries.ts'

/** Offers our invented series to whoever has no burns of their own to look at yet. */
export const SeriesOffer = () => {
  const there = useCell(documents).some(({ kind, name }) => kind === 'stove' && name === SERIES_BEGINS)
  const [busy, setBusy] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  if (there && !busy) return null
  const lay = async (): Promise<void> => {
    setBusy(true)
    try {
      go({ at: 'trials', stove: await layInSeries() })
    } catch (error) {
      setFault(`The series could not be laid in: ${error instanceof Error ? error.message : String(error)}.`)
    }
    setBusy(false)
  }
  return (
    <p className="small">
      Six stoves and 24 burns that we invented show what this page can tell: one change helps, one harms, one
      only looks as if it helped.{' '}
      <button type="button" disabled={busy} onClick={() => void lay()}>
        {busy ? 'Laying them in …' : 'Lay in the invented series'}
      </button>
      {fault !== null && <span role="alert"> {fault}</span>}
    </p>
  )
}
