import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** What Debian's admesh says of an STL file: how many parts, and everything it found to mend. */
export interface Admesh {
  readonly parts: number
  readonly disconnected: number
  readonly repairs: number
  readonly volume: number
}

const REPAIRS = [
  'Degenerate facets',
  'Edges fixed',
  'Facets removed',
  'Facets added',
  'Facets reversed',
  'Backwards edges',
  'Normals fixed',
] as const

/** Reads an STL file with a program we did not write. */
export const admesh = (stl: Uint8Array): Admesh => {
  const folder = mkdtempSync(join(tmpdir(), 'solid-'))
  try {
    const path = join(folder, 'solid.stl')
    writeFileSync(path, stl)
    const { stdout, stderr, status } = spawnSync('admesh', [path], { encoding: 'utf8' })
    if (status !== 0) throw new Error(`admesh: ${stderr}`)
    const figure = (label: string): number => {
      const found = new RegExp(`${label}\\s*:\\s*([-\\d.]+)`).exec(stdout)?.[1]
      if (found === undefined) throw new Error(`admesh says nothing of ${label}:\n${stdout}`)
      return Number(found)
    }
    return {
      parts: figure('Number of parts'),
      disconnected: figure('Total disconnected facets'),
      repairs: REPAIRS.reduce((sum, label) => sum + figure(label), 0),
      volume: figure('Volume'),
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
}
