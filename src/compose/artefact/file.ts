import { strToU8 } from 'fflate'

/** One file of a download or of a folder. */
export interface ArtefactFile {
  readonly name: string
  readonly bytes: Uint8Array
}

export const textFile = (name: string, text: string): ArtefactFile => ({ name, bytes: strToU8(text) })
