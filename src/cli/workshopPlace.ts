import { join, resolve } from 'node:path'
import type { Place } from '#store/open.ts'

export interface Machine {
  readonly platform: NodeJS.Platform
  readonly home: string
  readonly variables: Readonly<Record<string, string | undefined>>
}

const FILE = 'workshop.tinwright'

/** Where programs keep their data on this system. */
const dataFolder = ({ platform, home, variables }: Machine): string => {
  const said = (name: string): string | null => variables[name] || null
  if (platform === 'win32') return join(said('APPDATA') ?? join(home, 'AppData', 'Roaming'), 'Tinwright')
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Tinwright')
  return join(said('XDG_DATA_HOME') ?? join(home, '.local', 'share'), 'tinwright')
}

/** The server of `TINWRIGHT_DB`; else the file in `TINWRIGHT_HOME`; else the one in the system's folder for data. */
export const workshopPlace = (machine: Machine): Place => {
  const { TINWRIGHT_DB: server, TINWRIGHT_HOME: home } = machine.variables
  if (server) return { server }
  return { file: join(home || dataFolder(machine), FILE) }
}

/** A workshop that was named: a PostgreSQL server, or a file. */
export const namedPlace = (named: string): Place =>
  /^postgres(?:ql)?:\/\//.test(named) ? { server: named } : { file: resolve(named) }

/** The workshop that was named, or else the usual one. */
export const placeOf = (machine: Machine, named: string | undefined): Place =>
  named === undefined ? workshopPlace(machine) : namedPlace(named)

/** Beside the workshop; for a club's server, each bench has a list of its own. */
export const deviceListPath = (machine: Machine, place: Place): string =>
  'file' in place
    ? `${place.file}.devices.json`
    : join(machine.variables.TINWRIGHT_HOME || dataFolder(machine), 'club.devices.json')
