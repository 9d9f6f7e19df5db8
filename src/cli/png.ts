import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import type { PngPainter } from '#craft/card/png.ts'

const require = createRequire(import.meta.url)

/** A module may be started once only. */
let started: Promise<void> | null = null

const start = (): Promise<void> => initWasm(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm')))

/** The renderer of pictures, without any font of this machine: what it draws is the same everywhere. */
export const loadPngPainter = async (): Promise<PngPainter> => {
  started ??= start()
  await started
  return (svg) => {
    const picture = new Resvg(svg, { font: { fontBuffers: [] } })
    const image = picture.render()
    const bytes = image.asPng()
    image.free()
    picture.free()
    return bytes
  }
}
