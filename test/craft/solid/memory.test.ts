import Module from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { type SolidKernel, withSolids } from '#craft/solid/kernel.ts'
import { partSolid } from '#craft/solid/part.ts'
import { example } from './stoves.ts'

interface WasmMemory {
  readonly buffer: ArrayBuffer
}

type Instantiate = (...args: unknown[]) => Promise<{ readonly instance: { readonly exports: object } }>

/** What of WebAssembly this test needs; the type-checker of our Node code does not know it. */
const wasm = (globalThis as unknown as { readonly WebAssembly: { instantiate: Instantiate; Memory: never } })
  .WebAssembly

const isMemory = (value: unknown): value is WasmMemory =>
  typeof value === 'object' && value !== null && value.constructor === wasm.Memory

/** A kernel of our own, and the memory it lives in. */
const watchedKernel = async (): Promise<{ kernel: SolidKernel; bytes: () => number }> => {
  const memories: WasmMemory[] = []
  const original = wasm.instantiate
  wasm.instantiate = async (...args) => {
    const made = await original(...args)
    memories.push(...Object.values(made.instance.exports).filter(isMemory))
    return made
  }
  try {
    const kernel = await Module()
    kernel.setup()
    expect(memories.length).toBe(1)
    return { kernel, bytes: () => memories[0]!.buffer.byteLength }
  } finally {
    wasm.instantiate = original
  }
}

describe('memory of the kernel', () => {
  it('does not grow over 1000 solids', async () => {
    const { kernel, bytes } = await watchedKernel()
    const options = { facets: { chord: 0.1 }, facetsRound: 48, bandRadius: 50 }
    const build = (times: number): void => {
      for (let round = 0; round < times; round += 1)
        for (const name of ['concentrator', 'damper'])
          partSolid(kernel, name, example('Redshank').parts.get(name)!, options)
    }
    build(20)
    const before = bytes()
    build(480)
    expect(bytes()).toBe(before)
  })

  it('is given back where the work breaks off', () => {
    const freed: string[] = []
    const thing = (name: string) => ({ delete: () => freed.push(name) })
    expect(() =>
      withSolids((own) => {
        own(thing('first'))
        own(own(thing('second')))
        throw new Error('broke')
      }),
    ).toThrow('broke')
    expect(freed).toEqual(['first', 'second'])
  })
})
