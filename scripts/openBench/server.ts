import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildOnce } from './build.ts'

const main = join(import.meta.dirname, '..', '..', 'src', 'cli', 'main.ts')

export interface BenchServer {
  /** `http://127.0.0.1:41234/` */
  readonly address: string
  readonly home: string
  /** Where the house finds it, `http://192.168.1.20:41234`; none unless it was started with --lan. */
  readonly houseOrigins: readonly string[]
  /** Ends it as a power cut would. */
  readonly kill: () => Promise<void>
  /** Starts it again: the same workshop, the same address. */
  readonly start: () => Promise<void>
  /** Ends it and clears up. */
  readonly close: () => Promise<void>
}

interface Opened {
  readonly address: string
  readonly port: number
  readonly houseOrigins: readonly string[]
}

const open = async (
  home: string,
  port: number,
  more: readonly string[],
): Promise<{ readonly child: ChildProcess } & Opened> => {
  const args = [main, 'bench', '--port', String(port), '--no-open', '--json', ...more]
  const child = spawn(process.execPath, args, {
    env: { ...process.env, TINWRIGHT_HOME: home, TINWRIGHT_DB: '' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const said: string[] = []
  child.stderr?.on('data', (chunk: Buffer) => said.push(String(chunk)))
  let out = ''
  for await (const chunk of child.stdout as AsyncIterable<Buffer>) {
    out += String(chunk)
    if (out.includes('\n')) break
  }
  if (!out.includes('\n')) throw new Error(`The bench did not open: ${said.join('')}`)
  return { child, ...(JSON.parse(out) as Opened) }
}

/** A bench with the demo in a fresh workshop of its own; `more`: how else it is started, such as `--lan`. */
export const startServer = async (more: readonly string[] = []): Promise<BenchServer> => {
  await buildOnce()
  const home = mkdtempSync(join(tmpdir(), 'tinwright-bench-'))
  let running = await open(home, 0, more).catch((fault: unknown) => {
    rmSync(home, { recursive: true, force: true })
    throw fault
  })
  const { address, port, houseOrigins } = running
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    const { child } = running
    if (child.exitCode !== null || child.signalCode !== null) return
    const gone = once(child, 'exit')
    child.kill(signal)
    await gone
  }
  return {
    address,
    home,
    houseOrigins,
    kill: () => end('SIGKILL'),
    start: async () => {
      running = await open(home, port, more)
    },
    close: async () => {
      await end('SIGKILL')
      rmSync(home, { recursive: true, force: true, maxRetries: 10 })
    },
  }
}
