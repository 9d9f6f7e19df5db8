import { lstatSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { explain, SetUpFailed } from './failure.mjs'
import { npm } from './npm.mjs'
import { oneAtATime } from './oneAtATime.mjs'
import { bundledNodeVersion, isInstalledByHand, isStamped, lockedNodeVersion, writeStamp } from './state.mjs'

/** On stderr: what a command prints on stdout may be read by a program. */
const say = (/** @type {string} */ sentence) => console.error(sentence)

// npm 9 is the first that reads this lock file without rewriting it and knows `--include=dev`.
const OLDEST_NPM = 9

const checkNpm = async (/** @type {string} */ root) => {
  const { code, output } = await npm(root, ['--version'])
  const version = output.trim()
  if (code !== 0) {
    throw new SetUpFailed(
      'npm was not found. It comes with Node (https://nodejs.org): install it and run the command again.',
    )
  }
  if (Number.parseInt(version, 10) < OLDEST_NPM) {
    throw new SetUpFailed(
      `Tinwright needs npm ${OLDEST_NPM} or newer to set itself up; this is npm ${version}. ` +
        'Run `npm install --global npm@10` and then the command again.',
    )
  }
}

/**
 * npm may have installed everything and yet not the runtime: install scripts may be switched off,
 * and not every machine has a build of Node in the registry.
 *
 * @param {string} root
 * @param {string} npmOutput
 */
const checkRuntime = (root, npmOutput) => {
  const wanted = lockedNodeVersion(JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')))
  if (bundledNodeVersion(root) === wanted) return
  // A link to a Node that does not run would shadow the machine's own, and with it this sentence.
  rmSync(join(root, 'node_modules', '.bin', 'node'), { force: true })
  const cause =
    process.env.npm_config_ignore_scripts === 'true'
      ? 'npm is told to ignore install scripts, and the package `node` needs its own. Run the command again with `--ignore-scripts=false`.'
      : `There may be no build of it for this machine (${process.platform} ${process.arch}); a Linux without glibc is one such.`
  say(npmOutput.trim())
  throw new SetUpFailed(`The Node ${wanted} that comes with the packages does not run. ${cause}`)
}

const install = async (/** @type {string} */ root) => {
  await checkNpm(root)
  const started = performance.now()
  say('Setting up: installing the packages of package-lock.json (once; half a minute or so).')
  // `--include=dev`: with NODE_ENV=production npm would leave out the runtime and the test runner.
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--no-progress', '--loglevel=error']
  const { code, output } = await npm(root, args)
  if (code !== 0) {
    say(output.trim())
    throw new SetUpFailed(explain(output))
  }
  checkRuntime(root, output)
  writeStamp(root)
  say(`Set up in ${((performance.now() - started) / 1000).toFixed(1)} s.`)
}

/**
 * Brings the checkout to what its lock file says, and does nothing when it is there already.
 *
 * @param {URL} checkout
 */
export const setUp = async (checkout) => {
  const root = fileURLToPath(checkout)
  // Installing through a link would empty the folder it leads to: whoever set the link looks after that folder.
  if (lstatSync(join(root, 'node_modules'), { throwIfNoEntry: false })?.isSymbolicLink()) return
  if (isStamped(root)) return
  const work = async () => {
    if (isStamped(root)) return
    if (isInstalledByHand(root)) writeStamp(root)
    else await install(root)
  }
  await oneAtATime(root, work, say)
}
