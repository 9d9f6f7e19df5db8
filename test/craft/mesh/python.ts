import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Runs a Python script of the tests on a file of these bytes; its answer is JSON. */
export const python = <T>(script: URL, bytes: Uint8Array, ...args: readonly string[]): T => {
  const folder = mkdtempSync(join(tmpdir(), 'mesh-'))
  try {
    const path = join(folder, 'file')
    writeFileSync(path, bytes)
    const { stdout, stderr, status } = spawnSync('python3', [script.pathname, path, ...args], {
      encoding: 'utf8',
      maxBuffer: 1e8,
    })
    if (status !== 0) throw new Error(stderr)
    return JSON.parse(stdout) as T
  } finally {
    rmSync(folder, { recursive: true })
  }
}
