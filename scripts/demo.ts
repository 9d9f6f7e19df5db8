import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { nodeEnvironment } from '#cli/environment.ts'
import { cautionBlock, withoutCautions } from '#compose/page/cautions.ts'

// The main job on an example: what a stranger sees first. Runs the command line as anyone would.

process.chdir(join(import.meta.dirname, '..'))
const out = join('out', 'demo')

/** The files in `examples/` of one format, such as `tinwright/stove`, by name. */
const examples = (format: string): readonly string[] =>
  readdirSync('examples')
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => join('examples', name))
    .filter((path) => {
      const { format: found } = JSON.parse(readFileSync(path, 'utf8')) as { readonly format?: unknown }
      return typeof found === 'string' && found.startsWith(`${format}@`)
    })

/** A check that finds something ends with 1: that is an answer, not a breakdown. */
const FINDINGS = 1

/** Runs a command and shows what it says; the cautions, which every page ends with, are shown once, at the end. */
const tinwright = (...args: readonly string[]): string => {
  console.log(`\n$ npx tinwright ${args.join(' ')}\n`)
  const done = spawnSync(process.execPath, [join('src', 'cli', 'main.ts'), ...args], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  process.stdout.write(withoutCautions(done.stdout))
  if (done.status !== 0 && done.status !== FINDINGS) {
    throw new Error(`tinwright ${args[0]} ended with ${done.status ?? done.signal}`)
  }
  return done.stdout
}

const sizeText = (path: string): string => `${(statSync(path).size / 1024).toFixed(0)} kB`.padStart(8)

const main = (): void => {
  const [stove] = examples('tinwright/stove')
  if (stove === undefined) throw new Error('There is no stove file in examples/.')
  const [shelf] = examples('tinwright/shelf')
  rmSync(out, { recursive: true, force: true })
  mkdirSync(out, { recursive: true })
  const keep = (name: string, text: string): void => writeFileSync(join(out, name), text)

  console.log(`A stove from a file to a plan: ${stove}. The stove and its makers are invented.`)
  const owned = shelf === undefined ? [] : ['--shelf', shelf]
  keep('findings.txt', tinwright('check', stove, ...owned))
  keep('prediction.txt', tinwright('predict', stove))
  tinwright('templates', stove, '--paper', 'A4', '--out', out)
  tinwright('plan', stove, ...owned, '--paper', 'A4', '--out', out)

  console.log('\nMade:')
  for (const name of readdirSync(out).sort()) {
    console.log(`${sizeText(join(out, name))}  ${join(out, name)}`)
  }
  console.log(`\n${cautionBlock(nodeEnvironment().width)}`)
}

try {
  main()
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exitCode = 1
}
