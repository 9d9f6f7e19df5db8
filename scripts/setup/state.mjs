import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * What the checkout asks for and what is installed in it.
 *
 * @typedef {{ version?: string, integrity?: string, optional?: boolean, link?: boolean }} LockedPackage
 * @typedef {{ packages: Record<string, LockedPackage> }} LockFile
 */

/** @param {string} root */
const stampFile = (root) => join(root, 'node_modules', '.tinwright-stamp')

/** @param {string} root */
const lockText = (root) => readFileSync(join(root, 'package-lock.json'), 'utf8')

/**
 * The Node that npm scripts run on, brought by the npm package `node`.
 *
 * @param {string} root
 */
export const bundledNode = (root) =>
  join(root, 'node_modules', 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node')

/** @param {LockFile} lock */
export const lockedNodeVersion = (lock) => lock.packages['node_modules/node']?.version ?? ''

/**
 * A checkout that was copied to another kind of machine, or whose lock file changed, has another stamp.
 *
 * @param {string} root
 */
const stampFor = (root) => {
  const text = lockText(root)
  const lock = createHash('sha256').update(text).digest('hex')
  const node = lockedNodeVersion(JSON.parse(text))
  return `${JSON.stringify({ lock, node, platform: process.platform, arch: process.arch })}\n`
}

/** @param {string} file */
const readIfThere = (file) => (existsSync(file) ? readFileSync(file, 'utf8') : null)

/**
 * True when the last set-up was for this lock file, on this kind of machine.
 *
 * @param {string} root
 */
export const isStamped = (root) =>
  readIfThere(stampFile(root)) === stampFor(root) && existsSync(bundledNode(root))

/** @param {string} root */
export const writeStamp = (root) => writeFileSync(stampFile(root), stampFor(root))

/**
 * Whether npm's own record of what it installed agrees with the lock file, package by package. Only
 * optional packages (those for other machines) may be missing.
 *
 * @param {LockFile} lock
 * @param {LockFile} installed
 */
export const agrees = (lock, installed) => {
  const wanted = Object.entries(lock.packages).filter(([path]) => path !== '')
  const fulfilled = wanted.every(([path, want]) => {
    const have = installed.packages[path]
    if (have === undefined) return want.optional === true
    return have.version === want.version && have.integrity === want.integrity
  })
  return fulfilled && Object.keys(installed.packages).every((path) => path in lock.packages)
}

/**
 * The version the bundled Node reports, or null when it does not run here.
 *
 * @param {string} root
 */
export const bundledNodeVersion = (root) => {
  const run = spawnSync(bundledNode(root), ['--version'], { encoding: 'utf8' })
  return run.status === 0 ? run.stdout.trim().replace(/^v/, '') : null
}

/**
 * True when someone installed by hand (`npm ci`, `npm install …`) and got what the lock file says:
 * nothing needs doing again.
 *
 * @param {string} root
 */
export const isInstalledByHand = (root) => {
  const record = readIfThere(join(root, 'node_modules', '.package-lock.json'))
  if (record === null) return false
  const lock = JSON.parse(lockText(root))
  return agrees(lock, JSON.parse(record)) && bundledNodeVersion(root) === lockedNodeVersion(lock)
}
