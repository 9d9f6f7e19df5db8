import { useRef } from 'react'

interface FileButtonProps {
  /** What the button says. */
  readonly name: string
  /** What the hidden field is called. */
  readonly field: string
  readonly accept: string
  readonly multiple?: boolean
  readonly busy?: boolean
  readonly onFiles: (files: readonly File[]) => void
}

/** A button of the bench that opens the browser’s own window for choosing files. */
export const FileButton = ({
  name,
  field,
  accept,
  multiple = false,
  busy = false,
  onFiles,
}: FileButtonProps) => {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <input
        ref={input}
        className="unseen"
        type="file"
        accept={accept}
        multiple={multiple}
        aria-label={field}
        tabIndex={-1}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])]
          // Emptied first: the same file may be chosen once more.
          event.target.value = ''
          if (files.length > 0) onFiles(files)
        }}
      />
      <button type="button" disabled={busy} onClick={() => input.current?.click()}>
        {name}
      </button>
    </>
  )
}
