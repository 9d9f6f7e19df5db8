import { useState } from 'react'
import { bringIn } from '../workshop/files.ts'
import type { KnownTrial } from './allTrials.ts'
import { FileDrop } from './fileDrop.tsx'
import { takeLogger } from './logger/comeIn.ts'
import { WhichBurn } from './logger/whichBurn.tsx'

/** Trials as files, and loggers' files that somebody takes for trials. */
export const TakeIn = ({
  stove,
  trials,
  loading,
}: {
  /** Where a trial belongs whose own words fit no stove here. */
  readonly stove: string
  /** Burns that a logger's file may belong to. */
  readonly trials: readonly KnownTrial[]
  /** Some of them are still being fetched. */
  readonly loading: boolean
}) => {
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<readonly string[]>([])
  const take = async (files: readonly File[]): Promise<void> => {
    setBusy(true)
    setSaid([])
    const sentences: string[] = []
    for (const file of files)
      if (!(await takeLogger(file).catch(() => false))) sentences.push((await bringIn(file, stove)).sentence)
    setSaid(sentences)
    setBusy(false)
  }
  return (
    <>
      <FileDrop
        name={busy ? 'Taking them in …' : 'Take in trial files'}
        field="Trial files to take in"
        accept=".json,.csv,.zip,.txt,.tsv,application/json,text/csv,text/plain,application/zip"
        multiple
        busy={busy}
        onFiles={(files) => void take(files)}
      >
        <p>or drop them here: trials as JSON or as a table (CSV), or an archive.</p>
      </FileDrop>
      <div role="status">
        {said.map((sentence) => (
          <p key={sentence} className="said">
            {sentence}
          </p>
        ))}
      </div>
      <WhichBurn trials={trials} loading={loading} />
    </>
  )
}
