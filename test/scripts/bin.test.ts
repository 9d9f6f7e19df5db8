import { spawn, spawnSync } from 'node:child_process'
import { mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it, type TestContext } from 'vitest'
import { fakeCheckout } from './fakeCheckout.ts'

// Does as it is told, and says which Node it runs on when it is ready to be stopped.
const MAIN = `
const [how, what]: string[] = process.argv.slice(2)
if (how === 'exit') process.exitCode = Number(what)
if (how === 'throw') throw new Error(what)
if (how === 'wait') setTimeout(() => {}, 60_000)
if (how === 'wait politely') {
  process.on('SIGTERM', () => process.exit(7))
  setTimeout(() => {}, 60_000)
}
console.log(process.version, JSON.stringify(process.argv.slice(2)))
`
let checkout: ReturnType<typeof fakeCheckout>

beforeAll(async () => {
  checkout = fakeCheckout()
  await checkout.setUp()
  const node = checkout.path('node_modules', 'node', 'bin', 'node')
  rmSync(node)
  symlinkSync(process.execPath, node)
  mkdirSync(checkout.path('src', 'cli'), { recursive: true })
  writeFileSync(checkout.path('src', 'cli', 'main.ts'), MAIN)
})
afterAll(() => checkout.remove())

/** The Node of the machine, where it is not new enough to run the command line itself. */
const olderNode = (context: TestContext): string => {
  const host = process.env.npm_node_execpath
  if (host === undefined)
    return context.skip('npm does not run this, so the Node of the machine is not known')
  const version = spawnSync(host, ['--version'], { encoding: 'utf8' }).stdout.trim()
  if (Number.parseInt(version.slice(1), 10) >= 24)
    context.skip(`the Node of this machine, ${version}, is new enough`)
  return host
}

const tinwright = (node: string, ...args: string[]) =>
  spawnSync(node, [checkout.path('bin', 'tinwright.js'), ...args], { encoding: 'utf8' })

const stopped = (node: string, ...args: string[]): Promise<{ code: number | null; signal: string | null }> =>
  new Promise((resolve) => {
    const child = spawn(node, [checkout.path('bin', 'tinwright.js'), ...args])
    child.stdout.once('data', () => child.kill('SIGTERM'))
    child.on('exit', (code, signal) => resolve({ code, signal }))
  })

describe.each([
  ['the project’s own Node', () => process.execPath],
  ['an older Node of the machine', olderNode],
])('bin/tinwright.js, started by %s', (_, nodeFor) => {
  it('runs the command line on the project’s Node and hands over the words and the exit code', (context) => {
    const { status, stdout, stderr } = tinwright(nodeFor(context), 'exit', '2', 'a b', '--json')
    expect({ status, stderr }).toEqual({ status: 2, stderr: '' })
    expect(stdout).toBe(`${process.version} ["exit","2","a b","--json"]\n`)
  })

  it('does not end well when the command line breaks', (context) => {
    const { status, stderr } = tinwright(nodeFor(context), 'throw', 'a broken thing')
    expect(status).not.toBe(0)
    expect(stderr).toContain('a broken thing')
  })

  it('ends the way the command line ends when it is told to stop', async (context) => {
    const node = nodeFor(context)
    expect(await stopped(node, 'wait politely')).toEqual({ code: 7, signal: null })
    expect(await stopped(node, 'wait')).toEqual({ code: null, signal: 'SIGTERM' })
  })
})
