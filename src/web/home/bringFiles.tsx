import { type DragEvent, type ReactNode, useRef, useState } from 'react'
import { say } from '../bench/notices.ts'
import { bringIn } from '../workshop/files.ts'

const isTrial = ({ name }: File): boolean => /\.(trials?\.json|csv)$/.test(name)

/** Trials last: their stoves may be among the files. */
const bringAll = async (files: readonly File[]): Promise<void> => {
  for (const file of files.toSorted((a, b) => Number(isTrial(a)) - Number(isTrial(b))))
    say((await bringIn(file)).sentence)
}

const hasFiles = (event: DragEvent): boolean => event.dataTransfer.types.includes('Files')

/** A button for files, and a place where they may be dropped. */
export const FilesButton = () => {
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  const take = async (): Promise<void> => {
    const files = [...(input.current?.files ?? [])]
    setBusy(true)
    await bringAll(files)
    setBusy(false)
    if (input.current !== null) input.current.value = ''
  }
  return (
    <>
      <input
        ref={input}
        className="unseen"
        type="file"
        multiple
        accept=".json,.csv,.zip,application/json,text/csv,application/zip"
        aria-label="Files to bring in"
        tabIndex={-1}
        onChange={() => void take()}
      />
      <button type="button" disabled={busy} onClick={() => input.current?.click()}>
        {busy ? 'Bringing them in …' : 'Bring in files'}
      </button>
    </>
  )
}

export const DropPlace = ({ children }: { readonly children: ReactNode }) => {
  const [over, setOver] = useState(false)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way, the button is the first
    <div
      className="drop-place"
      data-over={over}
      onDragOver={(event) => {
        if (!hasFiles(event)) return
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false)
      }}
      onDrop={(event) => {
        if (!hasFiles(event)) return
        event.preventDefault()
        setOver(false)
        void bringAll([...event.dataTransfer.files])
      }}
    >
      {children}
      {over ? (
        <p className="drop-word">
          Let go: files of stoves, of a shelf or of trials, or an archive, are brought in.
        </p>
      ) : null}
    </div>
  )
}
