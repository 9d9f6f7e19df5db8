import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import type { DeviceFile } from '#server/door/devices.ts'

/** Read and written by its owner alone. */
const OWN = 0o600

/** The list of devices that were let in, as a file beside the workshop. */
export const deviceFileAt = (path: string): DeviceFile => ({
  read: () => {
    try {
      return readFileSync(path, 'utf8')
    } catch (error) {
      if ((error as { readonly code?: unknown }).code === 'ENOENT') return null
      throw error
    }
  },
  write: (text) => {
    const half = `${path}.${process.pid}.part`
    try {
      writeFileSync(half, text, { mode: OWN })
      renameSync(half, path)
    } catch (error) {
      rmSync(half, { force: true })
      throw error
    }
  },
})
