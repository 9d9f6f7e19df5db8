import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { TALLY_FILE } from './gate/reporter.ts'
import type { Line } from './gate/table.ts'
import { table, toldLines } from './gate/table.ts'
import type { Tally } from './gate/tally.ts'
import { countsLine } from './gate/tally.ts'

// The one gate: what a person runs before a commit and what the build machine runs. Every step runs,
// whatever became of those before it; see docs/decisions/0005-one-gate.md.

const root = join(import.meta.dirname, '..')
const tool = (path: string): string => join(root, 'node_modules', path)

interface Ran {
  readonly ok: boolean
  readonly seconds: number
  readonly output: string
}

const run = (args: readonly string[], options: { live?: boolean; env?: NodeJS.ProcessEnv } = {}): Ran => {
  const started = performance.now()
  const done = spawnSync(process.execPath, args, {
    cwd: root,
    env: { ...process.env, ...options.env },
    encoding: 'utf8',
    stdio: options.live ? ['ignore', 'inherit', 'inherit'] : ['ignore', 'pipe', 'pipe'],
    maxBuffer: 1 << 28,
  })
  return {
    ok: done.status === 0,
    seconds: (performance.now() - started) / 1000,
    output: `${done.stdout ?? ''}${done.stderr ?? ''}${done.error?.message ?? ''}`,
  }
}

/** A check outside the test runner: silent when it passes, all it said when it does not. */
const check = (name: string, args: readonly string[], note: string): Line => {
  const { ok, seconds, output } = run(args)
  if (!ok) console.log(`${name} failed:\n${output.trimEnd()}\n`)
  return { name, ok, seconds, note: ok ? note : '' }
}

/**
 * What Git tracks, so that a half-written file beside the work does not stop it; the whole folder where
 * there is no Git (an unpacked archive).
 */
const trackedFiles = (): readonly string[] => {
  const git = spawnSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' })
  if (git.status !== 0) return ['.']
  return git.stdout.split('\0').filter((path) => path !== '' && existsSync(join(root, path)))
}

const formatAndLint = (): Line => {
  const flags = ['--files-ignore-unknown=true', '--no-errors-on-unmatched', '--error-on-warnings']
  const files = trackedFiles()
  return check('format and lint', [tool('@biomejs/biome/bin/biome'), 'check', ...flags, ...files], '')
}

const types = (): Line => check('types', [tool('typescript/bin/tsc'), '-b'], '')

const NO_TESTS: Tally = {
  passed: 0,
  failed: 0,
  skipped: 0,
  rooms: [],
  leftOut: [],
  knownFailures: [],
  secondTries: [],
}

const readTally = (file: string): Tally =>
  existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Tally) : NO_TESTS

const tests = (): { readonly line: Line; readonly counts: Tally } => {
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-gate-'))
  try {
    const file = join(folder, 'tally.json')
    const ran = run([tool('vitest/vitest.mjs'), 'run'], { live: true, env: { [TALLY_FILE]: file } })
    const counts = readTally(file)
    // The runner may fail without a failed test: it crashed, or something broke while it closed.
    const failed = ran.ok ? counts.failed : Math.max(counts.failed, 1)
    const line = { name: 'tests', ok: ran.ok && failed === 0, seconds: ran.seconds, note: countsLine(counts) }
    return { line, counts: { ...counts, failed } }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const roomLine = (room: Tally['rooms'][number]): Line => ({
  name: `  ${room.name}`,
  ok: room.failed === 0,
  seconds: room.seconds,
  note: countsLine(room),
})

const main = (): void => {
  const checks = [formatAndLint(), types()]
  const { line, counts } = tests()
  const brokenChecks = checks.filter(({ ok }) => !ok).length
  const total = {
    passed: counts.passed + checks.length - brokenChecks,
    failed: counts.failed + brokenChecks,
    skipped: counts.skipped,
  }
  const lines = [...checks, line, ...counts.rooms.map(roomLine)]
  console.log([...toldLines(counts), '', 'Gate', ...table(lines), '', countsLine(total)].join('\n'))
  process.exitCode = total.failed === 0 ? 0 : 1
}

main()
