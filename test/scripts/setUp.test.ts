import { existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { afterEach, describe, expect, it } from 'vitest'
import { explain } from '#scripts/setup/failure.mjs'
import { findNpm } from '#scripts/setup/npm.mjs'
import { agrees } from '#scripts/setup/state.mjs'
import { fakeCheckout, type NpmManner } from './fakeCheckout.ts'

let made: ReturnType<typeof fakeCheckout>[] = []
const checkout = (manner?: NpmManner) => {
  const one = fakeCheckout(manner)
  made.push(one)
  return one
}
afterEach(() => {
  for (const one of made) one.remove()
  made = []
})

describe('the set-up', () => {
  it('installs a bare clone once, and says nothing when there is nothing to do', async () => {
    const bare = checkout()
    const first = await bare.setUp()
    expect(first.code).toBe(0)
    expect(first.stderr).toMatch(/^Setting up: .*\nSet up in \d+\.\d s\.\n$/)
    expect(await bare.setUp()).toEqual({ code: 0, stdout: '', stderr: '' })
    expect(bare.installs()).toHaveLength(1)
  })

  it('leaves stdout to the command that follows', async () => {
    expect((await checkout().setUp()).stdout).toBe('')
  })

  it('asks for the development packages, whatever NODE_ENV says', async () => {
    const bare = checkout()
    await bare.setUp({ NODE_ENV: 'production' })
    expect(bare.installs()).toEqual([expect.stringMatching(/^ci .*--include=dev/)])
  })

  it('installs again when the lock file has changed', async () => {
    const clone = checkout()
    await clone.setUp()
    const lock = readFileSync(clone.path('package-lock.json'), 'utf8')
    writeFileSync(clone.path('package-lock.json'), lock.replace('sha512-a', 'sha512-c'))
    await clone.setUp()
    expect(clone.installs()).toHaveLength(2)
  })

  it('installs again in a folder that came from another kind of machine', async () => {
    const clone = checkout()
    await clone.setUp()
    const stamp = clone.path('node_modules', '.tinwright-stamp')
    writeFileSync(stamp, readFileSync(stamp, 'utf8').replace(process.platform, 'plan9'))
    // Its runtime does not run here.
    writeFileSync(clone.path('node_modules', 'node', 'bin', 'node'), 'for another machine')
    await clone.setUp()
    expect(clone.installs()).toHaveLength(2)
  })

  it('takes over what was installed by hand, when it is what the lock file says', async () => {
    const clone = checkout()
    await clone.setUp()
    const stamp = clone.path('node_modules', '.tinwright-stamp')
    writeFileSync(stamp, '')
    expect(await clone.setUp()).toMatchObject({ code: 0, stderr: '' })
    expect(clone.installs()).toHaveLength(1)
    expect(readFileSync(stamp, 'utf8')).toContain('"node":"24.21.0"')
  })

  it('leaves packages alone that lie behind a link: installing would empty where it leads', async () => {
    const [clone, other] = [checkout(), checkout()]
    await other.setUp()
    symlinkSync(other.path('node_modules'), clone.path('node_modules'))
    const lock = readFileSync(clone.path('package-lock.json'), 'utf8')
    writeFileSync(clone.path('package-lock.json'), lock.replace('sha512-a', 'sha512-c'))
    expect(await clone.setUp()).toEqual({ code: 0, stdout: '', stderr: '' })
    expect(clone.installs()).toHaveLength(0)
    expect(existsSync(other.path('node_modules', 'node', 'bin', 'node'))).toBe(true)
  })

  it('installs once when two start at the same time', async () => {
    const bare = checkout({ takesItsTime: true })
    const [one, other] = await Promise.all([bare.setUp(), bare.setUp()])
    expect([one.code, other.code]).toEqual([0, 0])
    expect(bare.installs()).toHaveLength(1)
    expect(one.stderr + other.stderr).toContain('Another set-up of this folder is running')
  })

  it('takes over from a set-up that was killed', async () => {
    const bare = checkout({ failsWith: 'npm error code ENOTFOUND' })
    await bare.setUp()
    // No process has this number: Linux ends at 2^22.
    writeFileSync(bare.path('.setup', 'lock'), '99999999')
    bare.behave({})
    expect((await bare.setUp()).code).toBe(0)
    expect(existsSync(bare.path('.setup', 'lock'))).toBe(false)
  })

  it('shows the words of npm and a sentence when the network is away, and mends itself after', async () => {
    const bare = checkout({ failsWith: 'npm error code ENOTFOUND registry.npmjs.org' })
    const failed = await bare.setUp()
    expect(failed.code).toBe(1)
    expect(failed.stderr).toContain('npm error code ENOTFOUND registry.npmjs.org')
    expect(failed.stderr.trimEnd().split('\n').at(-1)).toMatch(/^npm could not reach its registry/)
    bare.behave({})
    expect((await bare.setUp()).code).toBe(0)
  })

  it('says so when npm is too old', async () => {
    const { code, stderr } = await checkout({ version: '6.14.18' }).setUp()
    expect(code).toBe(1)
    expect(stderr).toContain('needs npm 9 or newer to set itself up; this is npm 6.14.18')
  })

  it.each([
    ['does not run', null],
    ['is another', '22.1.0'],
  ])('says so when the Node that came %s, and does not leave it in the way', async (_, bringsNode) => {
    const bare = checkout({ bringsNode })
    const { code, stderr } = await bare.setUp()
    expect(code).toBe(1)
    expect(stderr).toContain('The Node 24.21.0 that comes with the packages does not run.')
    expect(existsSync(bare.path('node_modules', '.bin', 'node'))).toBe(false)
    expect(existsSync(bare.path('node_modules', '.tinwright-stamp'))).toBe(false)
  })

  it('names the switch when install scripts are off', async () => {
    const { stderr } = await checkout({ bringsNode: null }).setUp({ npm_config_ignore_scripts: 'true' })
    expect(stderr).toContain('--ignore-scripts=false')
  })
})

describe('what npm says, in a sentence', () => {
  it.each([
    ['npm error code EAI_AGAIN', /network/],
    ['npm error code ECONNREFUSED', /network/],
    ['npm error code SELF_SIGNED_CERT_IN_CHAIN', /certificate/],
    ['npm error nospc ENOSPC: no space left on device', /disk is full/],
    ['npm error code EACCES', /may not write/],
    ['npm error code EUSAGE', /do not belong together/],
    ['npm error code EINTEGRITY', /did not arrive/],
    ['npm error something new', /its own words are above/],
  ])('%s', (output, sentence) => {
    expect(explain(output)).toMatch(sentence)
  })
})

describe('what is installed against the lock file', () => {
  const a = { version: '1.0.0', integrity: 'sha512-a' }
  const optional = { version: '1.0.0', integrity: 'sha512-b', optional: true }
  it.each([
    ['the same', { '': {}, a }, { a }, true],
    ['an optional package that is not for this machine', { '': {}, a, optional }, { a }, true],
    ['a package too few', { '': {}, a, b: a }, { a }, false],
    ['a package too many', { '': {}, a }, { a, b: a }, false],
    ['another version', { '': {}, a }, { a: { ...a, version: '1.0.1' } }, false],
    ['another content', { '': {}, a }, { a: { ...a, integrity: 'sha512-x' } }, false],
  ])('%s', (_, packages, installed, expected) => {
    expect(agrees({ packages }, { packages: installed })).toBe(expected)
  })
})

describe('the npm that is started', () => {
  it('is the one that runs us', () => {
    const env = { npm_execpath: '/opt/npm/bin/npm-cli.js', npm_node_execpath: '/opt/node' }
    expect(findNpm(env)).toEqual({ command: '/opt/node', before: ['/opt/npm/bin/npm-cli.js'], shell: false })
  })

  it('is the one on the path where another package manager runs us', () => {
    expect(findNpm({ npm_execpath: '/opt/yarn.js' })).toMatchObject({ command: 'npm', before: [] })
  })
})
