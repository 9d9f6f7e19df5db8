import { spawn } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** What a run of the set-up came to. */
export interface Ended {
  readonly code: number | null
  readonly stdout: string
  readonly stderr: string
}

/** How the stand-in for npm behaves. */
export interface NpmManner {
  /** What it calls itself. */
  readonly version?: string
  /** What `npm ci` says before it fails; without it `npm ci` works. */
  readonly failsWith?: string
  /** The version of Node it brings; null brings one that does not run. */
  readonly bringsNode?: string | null
  /** Lets another process start while it installs. */
  readonly takesItsTime?: boolean
}

const LOCK = {
  packages: {
    '': { version: '0.1.0' },
    'node_modules/node': { version: '24.21.0', integrity: 'sha512-a' },
    'node_modules/elsewhere-only': { version: '1.0.0', integrity: 'sha512-b', optional: true },
  },
}

// Stands where npm's own script does (CommonJS, as that is). Says on a line of calls.txt that it was asked to install.
const NPM = `
const fs = require('node:fs')
const manner = JSON.parse(fs.readFileSync(process.env.FAKE_NPM, 'utf8'))
if (process.argv[2] === '--version') { console.log(manner.version ?? '10.8.2'); process.exit(0) }
fs.appendFileSync('calls.txt', process.argv.slice(2).join(' ') + '\\n')
console.log('npm warn EBADENGINE Unsupported engine')
if (manner.failsWith) { console.error(manner.failsWith); process.exit(1) }
fs.rmSync('node_modules', { recursive: true, force: true })
fs.mkdirSync('node_modules/node/bin', { recursive: true })
fs.mkdirSync('node_modules/.bin')
const lock = JSON.parse(fs.readFileSync('package-lock.json', 'utf8'))
delete lock.packages['']
delete lock.packages['node_modules/elsewhere-only']
fs.writeFileSync('node_modules/.package-lock.json', JSON.stringify(lock))
const brings = manner.bringsNode === undefined ? '24.21.0' : manner.bringsNode
fs.writeFileSync('node_modules/node/bin/node', brings === null ? 'no program' : '#!/bin/sh\\necho v' + brings, { mode: 0o755 })
fs.symlinkSync('../node/bin/node', 'node_modules/.bin/node')
if (manner.takesItsTime) setTimeout(() => {}, 500)
`

/** A checkout of its own in a temporary folder, with the real set-up scripts and a stand-in for npm. */
export const fakeCheckout = (manner: NpmManner = {}) => {
  const root = mkdtempSync(join(tmpdir(), 'tinwright-set-up-'))
  const path = (...parts: string[]): string => join(root, ...parts)
  const scripts = join(import.meta.dirname, '..', '..', 'scripts')
  mkdirSync(path('scripts'))
  cpSync(join(scripts, 'setup.mjs'), path('scripts', 'setup.mjs'))
  cpSync(join(scripts, 'setup'), path('scripts', 'setup'), { recursive: true })
  cpSync(join(scripts, '..', 'bin'), path('bin'), { recursive: true })
  writeFileSync(path('package.json'), '{ "type": "module" }')
  writeFileSync(path('package-lock.json'), JSON.stringify(LOCK))
  mkdirSync(path('npm'))
  writeFileSync(path('npm', 'package.json'), '{ "type": "commonjs" }')
  writeFileSync(path('npm', 'npm-cli.js'), NPM)
  const behave = (how: NpmManner): void => writeFileSync(path('manner.json'), JSON.stringify(how))
  behave(manner)
  return {
    path,
    behave,
    setUp: (env: NodeJS.ProcessEnv = {}): Promise<Ended> =>
      new Promise((resolve, reject) => {
        const child = spawn(process.execPath, [path('scripts', 'setup.mjs')], {
          env: {
            ...process.env,
            npm_execpath: path('npm', 'npm-cli.js'),
            npm_node_execpath: process.execPath,
            FAKE_NPM: path('manner.json'),
            ...env,
          },
        })
        let stdout = ''
        let stderr = ''
        child.stdout.on('data', (text) => {
          stdout += text
        })
        child.stderr.on('data', (text) => {
          stderr += text
        })
        child.on('error', reject)
        child.on('close', (code) => resolve({ code, stdout, stderr }))
      }),
    /** The installs that were asked of npm. */
    installs: (): readonly string[] =>
      existsSync(path('calls.txt')) ? readFileSync(path('calls.txt'), 'utf8').trim().split('\n') : [],
    remove: (): void => rmSync(root, { recursive: true, force: true }),
  }
}
