import Module from 'manifold-3d'
import type { SolidKernel } from '#craft/solid/kernel.ts'

let loaded: Promise<SolidKernel> | null = null

const load = async (): Promise<SolidKernel> => {
  const kernel = await Module()
  kernel.setup()
  return kernel
}

/**
 * The solid kernel, loaded once. In Node its package finds its own WASM file; in a browser a bundler has to say where
 * that file is: `Module({ locateFile: () => wasmUrl })` with `import wasmUrl from 'manifold-3d/manifold.wasm?url'`.
 */
export const solidKernel = (): Promise<SolidKernel> => {
  loaded ??= load()
  return loaded
}
