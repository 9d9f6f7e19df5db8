import { type DragEvent, type ReactNode, useState } from 'react'

interface DropAreaProps {
  readonly className: string
  /** Beside the children while files hang over it. */
  readonly over?: ReactNode
  readonly onFiles: (files: readonly File[]) => void
  readonly children: ReactNode
}

const hasFiles = (event: DragEvent): boolean => event.dataTransfer.types.includes('Files')

/** A place where files are dropped; whoever drops nothing has a button inside. */
export const DropArea = ({ className, over, onFiles, children }: DropAreaProps) => {
  const [hanging, setHanging] = useState(false)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is the shorter way, a button inside is the other
    <div
      className={className}
      data-over={hanging}
      onDragOver={(event) => {
        if (!hasFiles(event)) return
        event.preventDefault()
        setHanging(true)
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setHanging(false)
      }}
      onDrop={(event) => {
        if (!hasFiles(event)) return
        event.preventDefault()
        setHanging(false)
        onFiles([...event.dataTransfer.files])
      }}
    >
      {children}
      {hanging ? over : null}
    </div>
  )
}
