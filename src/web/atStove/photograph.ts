/** Longer side of a photo as it is kept: a hole of 5 mm in a stove that fills the picture is 60 wide [px]. */
const LONGEST = 2000
const QUALITY = 0.85
/** Small enough to be left as it came [bytes]. */
const SMALL = 700_000

/** A photo as it is kept: smaller where it is large, else as it came. */
export const photograph = async (file: File): Promise<Blob> => {
  if (file.size <= SMALL && /^image\/(?:jpeg|png|webp)$/.test(file.type)) return file
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
    const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height))
    const sheet = document.createElement('canvas')
    sheet.width = Math.round(picture.width * scale)
    sheet.height = Math.round(picture.height * scale)
    sheet.getContext('2d')?.drawImage(picture, 0, 0, sheet.width, sheet.height)
    picture.close()
    return await new Promise<Blob>((give) =>
      sheet.toBlob((blob) => give(blob ?? file), 'image/jpeg', QUALITY),
    )
  } catch {
    return file
  }
}
