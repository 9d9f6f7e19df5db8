import { useEffect, useState } from 'react'
import { useCell } from '../../cell/useCell.ts'
import { go } from '../../routes/here.ts'
import type { KnownTrial } from '../allTrials.ts'
import { type CameIn, cameIn, forget, layBeside } from './comeIn.ts'
import { keptFile } from './keptFiles.ts'

interface BurnsProps {
  readonly trials: readonly KnownTrial[]
  /** Some are still being fetched. */
  readonly loading: boolean
}

const One = ({ file, trials, loading }: BurnsProps & { readonly file: CameIn }) => {
  const [chosen, setChosen] = useState('')
  const [only] = trials.length === 1 && !loading ? trials : []
  const trial = chosen === '' ? (only?.head.id ?? '') : chosen
  const [there, setThere] = useState<string | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  useEffect(() => {
    let gone = false
    setThere(null)
    if (trial === '') return
    void keptFile(trial).then((kept) => {
      if (!gone) setThere(kept?.name ?? null)
    })
    return () => {
      gone = true
    }
  }, [trial])
  const lay = async (): Promise<void> => {
    if (await layBeside(file, trial)) go({ at: 'trial', trial })
    else setSaid('This browser has no room to keep the file. Open the burn’s desk and drop it there.')
  }
  return (
    <li>
      <p role="status">
        {file.name} is a logger’s file: readings over time, no burn of its own. It lies beside the burn during
        which it was written; there it is asked what its columns are.
      </p>
      {trials.length === 0 && loading ? null : trials.length === 0 ? (
        <p>There is no burn yet: start it above, and its desk offers this file.</p>
      ) : (
        <div className="log-add">
          <label>
            Which burn was it?
            <select value={trial} onChange={(event) => setChosen(event.target.value)}>
              <option value="">choose …</option>
              {trials.toReversed().map(({ head, draft }) => (
                <option key={head.id} value={head.id}>
                  {head.name}
                  {typeof draft.day === 'string' ? `, ${draft.day}` : ''}
                </option>
              ))}
            </select>
          </label>
          <button type="button" data-weight="main" disabled={trial === ''} onClick={() => void lay()}>
            Lay it beside this burn
          </button>
          <button type="button" onClick={() => forget(file)}>
            Put it away
          </button>
        </div>
      )}
      {there !== null && <p className="small">{there} lies there now; this one takes its place.</p>}
      {said !== null && <p data-fault="true">{said}</p>}
    </li>
  )
}

/** Loggers' files that came in among trials: each is asked where it belongs. */
export const WhichBurn = (burns: BurnsProps) => {
  const files = useCell(cameIn)
  if (files.length === 0) return null
  return (
    <ul className="which-burn">
      {files.map((file) => (
        <One key={file.name} file={file} {...burns} />
      ))}
    </ul>
  )
}
