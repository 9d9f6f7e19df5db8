import { type Lettering, letteringBox, type PixelBox } from '#craft/section/sheet.ts'

export const meet = (a: PixelBox, b: PixelBox): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

/** Words that lie over others, in pairs: `one / other`. */
export const overlaps = (letterings: readonly Lettering[]): readonly string[] =>
  letterings.flatMap((one, i) =>
    letterings
      .slice(i + 1)
      .filter((other) => meet(letteringBox(one), letteringBox(other)))
      .map((other) => `${one.text} / ${other.text}`),
  )

/** Words that do not lie whole on a page so wide and high. */
export const offPage = (letterings: readonly Lettering[], width: number, height: number): readonly string[] =>
  letterings
    .filter((lettering) => {
      const { left, right, top, bottom } = letteringBox(lettering)
      return left < 0 || right > width || top < 0 || bottom > height
    })
    .map(({ text }) => text)
