import { type DragEvent, type ReactNode, useRef, useState } from 'react'

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

const hasFiles = (event: DragEvent): boolean => event.dataTransfer.types.includes('Files')

/** A place where files are dropped, and a button for whoever drops nothing. */
export const FileDrop = ({ name, field, accept, multiple, busy, children, onFiles }: FileDropProps) => {
  const input = useRef<HTMLInputElement>(null)
  const [over, setOver] = useState(false)
  const take = (files: FileList | null): void => {
    const all = [...(files ?? [])]
    const some = multiple === true ? all : all.slice(0, 1)
    if (some.length > 0 && busy !== true) onFiles(some)
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is the shorter way; the button inside is the other
    <div
      className="file-drop"
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
        take(event.dataTransfer.files)
      }}
    >
      <input
        ref={input}
        className="unseen"
        type="file"
        accept={accept}
        multiple={multiple === true}
        aria-label={field}
        tabIndex={-1}
        onChange={(event) => {
          take(event.target.files)
          event.target.value = ''
        }}
      />
      <button type="button" disabled={busy === true} onClick={() => input.current?.click()}>
        {name}
      </button>
      <div className="file-drop-words">{children}</div>
    </div>
  )
}
