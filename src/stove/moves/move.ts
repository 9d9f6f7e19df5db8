import type { StoveFile } from '#stove/document/schema.ts'

/** One change of a stove file as a hand makes it, with the words that undo says of it. Touches no file it is given. */
export interface Move {
  /** After "undo": `move ring to 18 mm`. */
  readonly label: string
  readonly change: (file: StoveFile) => StoveFile
}

/** Which opening of which part. */
export interface OpeningRef {
  readonly part: string
  readonly opening: string
}

export type PartFile = StoveFile['parts'][string]
export type OpeningFile = NonNullable<PartFile['openings']>[string]
export type RowFile = Extract<OpeningFile, { kind: 'row' }>
export type PatternFile = Extract<OpeningFile, { kind: 'pattern' }>
export type PlacementFile = StoveFile['assembly'][number]

/** An opening as the file has it; undefined where there is none of the name. */
export const openingIn = (file: StoveFile, { part, opening }: OpeningRef): OpeningFile | undefined =>
  file.parts[part]?.openings?.[opening]

/** The file with one part changed; the same file where there is no such part. */
export const withPart = (file: StoveFile, name: string, change: (part: PartFile) => PartFile): StoveFile => {
  const part = file.parts[name]
  return part === undefined ? file : { ...file, parts: { ...file.parts, [name]: change(part) } }
}

/** The file with one opening changed; the same file where there is none of the name, or of another kind. */
export const withOpening = <K extends OpeningFile['kind']>(
  file: StoveFile,
  { part, opening: name }: OpeningRef,
  kind: K,
  change: (opening: Extract<OpeningFile, { kind: K }>) => Extract<OpeningFile, { kind: K }>,
): StoveFile => {
  const opening = openingIn(file, { part, opening: name })
  if (opening?.kind !== kind) return file
  return withPart(
    file,
    part,
    (whole) =>
      ({
        ...whole,
        openings: { ...whole.openings, [name]: change(opening as Extract<OpeningFile, { kind: K }>) },
      }) as PartFile,
  )
}

/** The file with the placement of one part changed. */
export const withPlacement = (
  file: StoveFile,
  part: string,
  change: (placement: PlacementFile) => PlacementFile,
): StoveFile => ({
  ...file,
  assembly: file.assembly.map((placement) => (placement.part === part ? change(placement) : placement)),
})

/** Between a least and a most; the least where the two have crossed. */
export const within = (least: number, most: number, value: number): number =>
  Math.max(least, Math.min(most, value))

/** An angle as a file has it: `15 deg`, a tenth where it wants one. */
export const degreesText = (degrees: number): string => `${Number(degrees.toFixed(1))} deg`
