import { useEffect } from 'react'
import { singleKeys } from '../../settings/settings.ts'
import { redo, undo } from '../undoer.ts'

/** Where keys are letters: a field has an undo of its own. */
const writes = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || target.matches('textarea, select, input:not([type=checkbox], [type=radio])'))

/** Keys that work all over the bench. */
export const useBenchKeys = (showKeys: () => void): void => {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || writes(event.target)) return
      const key = event.key.toLowerCase()
      const command = (event.ctrlKey || event.metaKey) && !event.altKey
      if (command && key === 'z') event.shiftKey ? redo() : undo()
      else if (command && key === 'y') redo()
      else if (!command && event.key === '?' && singleKeys.get() === 'on') showKeys()
      else return
      event.preventDefault()
    }
    addEventListener('keydown', press)
    return () => removeEventListener('keydown', press)
  }, [showKeys])
}
