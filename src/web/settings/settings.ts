import { createCell, type OpenCell } from '../cell/cell.ts'

/** Of this browser, not of the workshop: two people at one workshop may read different units. */
export type Units = 'mm' | 'in' | 'both'
export type Look = 'light' | 'dark' | 'as the device'

const remembered = <T extends string>(key: string, allowed: readonly T[], usual: T): OpenCell<T> => {
  const read = (): T => {
    try {
      const text = localStorage.getItem(key)
      return allowed.find((word) => word === text) ?? usual
    } catch {
      return usual
    }
  }
  const cell = createCell<T>(read())
  cell.subscribe(() => {
    try {
      localStorage.setItem(key, cell.get())
    } catch {
      // A browser that keeps nothing forgets the choice, no more.
    }
  })
  return cell
}

export const units = remembered<Units>('tinwright.units', ['mm', 'in', 'both'], 'both')
export const look = remembered<Look>('tinwright.look', ['light', 'dark', 'as the device'], 'as the device')

/** Keys that do something without Ctrl or Cmd get in the way of speech input: they can be turned off. */
export const singleKeys = remembered<'on' | 'off'>('tinwright.singleKeys', ['on', 'off'], 'on')

const darkDevice = matchMedia('(prefers-color-scheme: dark)')
const night = (): boolean => (look.get() === 'as the device' ? darkDevice.matches : look.get() === 'dark')

/** `light` or `dark`, as it is now; the pictures take their colours by it. */
export const theme = createCell<'light' | 'dark'>(night() ? 'dark' : 'light')

const wear = (): void => {
  theme.set(night() ? 'dark' : 'light')
  document.documentElement.dataset.theme = theme.get()
}
look.subscribe(wear)
darkDevice.addEventListener('change', wear)
wear()
