import { statfsSync } from 'node:fs'

/**
 * File systems of other machines, by the number Linux gives them [bib:statfs]. The write-ahead log shares
 * memory between programs; over a network that memory is not shared, and two machines would spoil the file.
 * Elsewhere than on Linux such numbers mean other things, and nothing can be told.
 */
const NETWORK: ReadonlyMap<number, string> = new Map([
  [0x6969, 'NFS'],
  [0x517b, 'SMB'],
  [0xfe534d42, 'SMB'],
  [0xff534d42, 'CIFS'],
  [0x5346414f, 'AFS'],
  [0x00c36400, 'Ceph'],
  [0x01021997, '9P'],
  [0x564c, 'NCP'],
])

export type FileSystemType = (folder: string) => number | null

const linuxFileSystemType: FileSystemType = (folder) =>
  process.platform === 'linux' ? statfsSync(folder).type >>> 0 : null

/** Name of the network file system a folder lies on, or null. */
export const networkDrive = (folder: string, typeOf: FileSystemType = linuxFileSystemType): string | null => {
  const type = typeOf(folder)
  return type === null ? null : (NETWORK.get(type) ?? null)
}
