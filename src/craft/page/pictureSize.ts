export interface PictureSize {
  readonly width: number
  readonly height: number
}

/** Width and height that an SVG of this house gives itself, in its own units. Throws `SyntaxError` for one without. */
export const pictureSize = (svg: string): PictureSize => {
  const box = /^<svg[^>]*\sviewBox="([^"]+)"/.exec(svg)?.[1]?.split(/\s+/).map(Number)
  const [, , width, height] = box ?? []
  if (width === undefined || height === undefined || !(width > 0) || !(height > 0))
    throw new SyntaxError('A picture gives its size by a viewBox')
  return { width, height }
}

/** The same picture with ids of its own, so that several live in one document. */
export const withOwnIds = (svg: string, prefix: string): string =>
  svg
    .replace(/ id="([^"]+)"/g, ` id="${prefix}-$1"`)
    .replace(/(href="#|url\(#)([^")]+)/g, `$1${prefix}-$2`)
    .replace(
      /aria-labelledby="([^"]+)"/g,
      (_, ids: string) =>
        `aria-labelledby="${ids
          .split(' ')
          .map((id) => `${prefix}-${id}`)
          .join(' ')}"`,
    )
