/** Pictures a browser shows and that carry no program, by their first bytes. SVG does carry one. */
const STARTS: readonly (readonly [mediaType: string, ending: string, starts: (b: Uint8Array) => boolean])[] =
  [
    ['image/jpeg', 'jpg', (b) => b[0] === 0xff && b[1] === 0xd8 && b[2] === 0xff],
    ['image/png', 'png', (b) => [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a].every((v, i) => b[i] === v)],
    ['image/webp', 'webp', (b) => latin(b, 0, 4) === 'RIFF' && latin(b, 8, 12) === 'WEBP'],
  ]

const latin = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to))

export interface PhotoKind {
  readonly mediaType: string
  readonly ending: string
}

/** What the bytes are, whatever anyone calls them; null for anything that is no photo. */
export const photoKind = (bytes: Uint8Array): PhotoKind | null => {
  const found = STARTS.find(([, , starts]) => starts(bytes))
  return found === undefined ? null : { mediaType: found[0], ending: found[1] }
}
