import type { ManifoldToplevel } from 'manifold-3d'

/**
 * The solid kernel: the WASM module of manifold-3d, set up. How its bytes are found differs between Node and a
 * browser, so it comes in as an argument.
 */
export type SolidKernel = ManifoldToplevel

/** A closed solid of the kernel. */
export type Solid = InstanceType<SolidKernel['Manifold']>

/** Marks something of the kernel as ours to free, and hands it back. */
export type Own = <T extends { delete(): void }>(made: T) => T

/**
 * Runs work that makes solids. What is marked as owned is freed when it ends, well or badly: the kernel's memory lies
 * outside the reach of the garbage collector. What leaves must be plain data.
 */
export const withSolids = <T>(work: (own: Own) => T): T => {
  const owned = new Set<{ delete(): void }>()
  try {
    return work((made) => {
      owned.add(made)
      return made
    })
  } finally {
    for (const made of owned) made.delete()
  }
}
