import type { Browser } from 'playwright-core'
import { afterAll } from 'vitest'
import { needs } from '../../outsideProgram.ts'
import { launch } from '../harness/browser.ts'
import { type BenchServer, startServer } from '../harness/server.ts'

interface Ready {
  readonly server: BenchServer
  readonly browser: Browser
}

/** One bench and one browser for a file of tests, begun by the first that needs them. */
export const benchForTests = () => {
  let begun: Promise<Ready> | null = null
  const begin = async (): Promise<Ready> => {
    const server = await startServer()
    return { server, browser: await launch() }
  }
  afterAll(async () => {
    const ready = await begun
    await ready?.browser.close()
    await ready?.server.close()
  })
  return async (context: { readonly skip: (reason: string) => unknown }): Promise<Ready> => {
    needs(context, 'chromium')
    begun ??= begin()
    return begun
  }
}
