import cyrillic400 from '@fontsource/source-sans-3/files/source-sans-3-cyrillic-400-normal.woff?url'
import cyrillic600 from '@fontsource/source-sans-3/files/source-sans-3-cyrillic-600-normal.woff?url'
import greek400 from '@fontsource/source-sans-3/files/source-sans-3-greek-400-normal.woff?url'
import greek600 from '@fontsource/source-sans-3/files/source-sans-3-greek-600-normal.woff?url'
import latin400 from '@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff?url'
import latin600 from '@fontsource/source-sans-3/files/source-sans-3-latin-600-normal.woff?url'
import latinExt400 from '@fontsource/source-sans-3/files/source-sans-3-latin-ext-400-normal.woff?url'
import latinExt600 from '@fontsource/source-sans-3/files/source-sans-3-latin-ext-600-normal.woff?url'
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import resvgWasm from '@resvg/resvg-wasm/index_bg.wasm?url'
import Module from 'manifold-3d'
import manifoldWasm from 'manifold-3d/manifold.wasm?url'
import type { PngPainter } from '#craft/card/png.ts'
import type { LetteringFonts } from '#craft/pdf/face.ts'
import type { SolidKernel } from '#craft/solid/kernel.ts'

/** Begun once; begun anew after it failed, for the bench may be there again. */
const once = <T>(work: () => Promise<T>): (() => Promise<T>) => {
  let begun: Promise<T> | null = null
  return () => {
    begun ??= work().catch((error: unknown) => {
      begun = null
      throw error
    })
    return begun
  }
}

const bytesOf = async (url: string): Promise<Uint8Array> => {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`The bench did not hand out ${url} (${answer.status}).`)
  return new Uint8Array(await answer.arrayBuffer())
}

/** The lettering of every page, script by script. */
export const loadFonts = once(
  async (): Promise<LetteringFonts> => ({
    regular: await Promise.all([latin400, latinExt400, greek400, cyrillic400].map(bytesOf)),
    semibold: await Promise.all([latin600, latinExt600, greek600, cyrillic600].map(bytesOf)),
  }),
)

export const loadKernel = once(async (): Promise<SolidKernel> => {
  const kernel = await Module({ locateFile: () => manifoldWasm })
  kernel.setup()
  return kernel
})

/** The renderer of pictures, without any font of this machine: what it draws is the same everywhere. */
export const loadPainter = once(async (): Promise<PngPainter> => {
  await initWasm(fetch(resvgWasm))
  return (svg) => {
    const picture = new Resvg(svg, { font: { fontBuffers: [] } })
    const image = picture.render()
    const bytes = image.asPng()
    image.free()
    picture.free()
    return bytes
  }
})
