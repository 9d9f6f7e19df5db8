import type { Kind } from '../kinds.ts'

/** Folder of a kind in an archive. */
const FOLDERS: Readonly<Record<Kind, string>> = {
  stove: 'stoves',
  can: 'cans',
  bit: 'bits',
  fuel: 'fuels',
  pot: 'pots',
  trial: 'trials',
  photo: 'photos',
  setting: 'settings',
}

/** Names that Windows keeps for itself. */
const RESERVED = ['con', 'prn', 'aux', 'nul', ...[...'123456789'].flatMap((n) => [`com${n}`, `lpt${n}`])]

const MOST = 40

/** A name as part of a path on any system: small letters, digits and dashes; empty where none is left. */
export const slug = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, MOST)
    .replace(/^-+|-+$/g, '')

/** Gives each name a folder of its own, by counting on where two would share one. */
export const folderNames = (): ((kind: Kind, name: string) => string) => {
  const taken = new Set<string>()
  return (kind, name) => {
    const base = slug(name) || kind
    let folder = base
    for (let n = 2; taken.has(`${kind}/${folder}`) || RESERVED.includes(folder); n++) folder = `${base}-${n}`
    taken.add(`${kind}/${folder}`)
    return `${FOLDERS[kind]}/${folder}`
  }
}
