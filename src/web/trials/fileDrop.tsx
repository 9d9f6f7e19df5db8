import type { ReactNode } from 'react'
import { DropArea } from '../files/dropArea.tsx'
import { FileButton } from '../files/fileButton.tsx'

interface FileDropProps {
  /** What the button says. */
  readonly name: string
  /** What the hidden field is called. */
  readonly field: string
  readonly accept: string
  readonly multiple?: boolean
  readonly busy?: boolean
  /** Beside the button. */
  readonly children: ReactNode
  readonly onFiles: (files: readonly File[]) => void
}

/** A place where files are dropped, and a button for whoever drops nothing. */
export const FileDrop = ({ multiple = false, busy = false, children, onFiles, ...button }: FileDropProps) => {
  const take = (files: readonly File[]): void => {
    const some = multiple ? files : files.slice(0, 1)
    if (some.length > 0 && !busy) onFiles(some)
  }
  return (
    <DropArea className="file-drop" onFiles={take}>
      <FileButton {...button} multiple={multiple} busy={busy} onFiles={take} />
      <div className="file-drop-words">{children}</div>
    </DropArea>
  )
}
