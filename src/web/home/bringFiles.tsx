import { type ReactNode, useState } from 'react'
import { say } from '../bench/notices.ts'
import { DropArea } from '../files/dropArea.tsx'
import { FileButton } from '../files/fileButton.tsx'
import { bringIn } from '../workshop/files.ts'

const isTrial = ({ name }: File): boolean => /\.(trials?\.json|csv)$/.test(name)

/** Trials last: their stoves may be among the files. */
const bringAll = async (files: readonly File[]): Promise<void> => {
  for (const file of files.toSorted((a, b) => Number(isTrial(a)) - Number(isTrial(b))))
    say((await bringIn(file)).sentence)
}

export const FilesButton = () => {
  const [busy, setBusy] = useState(false)
  const take = async (files: readonly File[]): Promise<void> => {
    setBusy(true)
    await bringAll(files)
    setBusy(false)
  }
  return (
    <FileButton
      name={busy ? 'Bringing them in …' : 'Bring in files'}
      field="Files to bring in"
      accept=".json,.csv,.zip,application/json,text/csv,application/zip"
      multiple
      busy={busy}
      onFiles={(files) => void take(files)}
    />
  )
}

export const DropPlace = ({ children }: { readonly children: ReactNode }) => (
  <DropArea
    className="drop-place"
    onFiles={(files) => void bringAll(files)}
    over={
      <p className="drop-word">
        Let go: files of stoves, of a shelf or of trials, or an archive, are brought in.
      </p>
    }
  >
    {children}
  </DropArea>
)
