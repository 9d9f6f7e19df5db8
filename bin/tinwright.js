#!/usr/bin/env node
// Starts the command line on the project's own Node, whatever Node runs this file (so nothing newer
// than Node 14 in here): installs first where nothing is installed yet.
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
const INTERNAL = 3

/**
 * Hands the terminal to the bundled Node and ends the way it ends.
 *
 * @param {string} node
 * @param {string} main
 */
const runOnBundledNode = async (node, main) => {
  const { spawn } = await import('node:child_process')
  const child = spawn(node, [main, ...process.argv.slice(2)], { stdio: 'inherit' })
  const passOn = /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])
  const forward = (/** @type {NodeJS.Signals} */ signal) => {
    // Ctrl-C in a terminal reaches the child by itself: once is enough.
    if (signal !== 'SIGINT' || !process.stdin.isTTY) child.kill(signal)
  }
  for (const signal of passOn) process.on(signal, forward)
  child.on('error', (error) => {
    console.error(`The Node that comes with Tinwright did not start: ${error.message}`)
    process.exitCode = INTERNAL
  })
  child.on('exit', (code, signal) => {
    for (const name of passOn) process.off(name, forward)
    if (signal) process.kill(process.pid, signal)
    else process.exitCode = code
  })
}

const start = async () => {
  const { fileURLToPath } = await import('node:url')
  const { setUp } = await import('../scripts/setup/setUp.mjs')
  const { bundledNode } = await import('../scripts/setup/state.mjs')
  const root = new URL('..', import.meta.url)
  await setUp(root)
  const main = new URL('src/cli/main.ts', root)
  if (major >= 24) await import(main.href)
  else await runOnBundledNode(bundledNode(fileURLToPath(root)), fileURLToPath(main))
}

if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Tinwright needs Node 20.19 or newer to start; this is Node ${process.versions.node}. ` +
      'Install a newer Node (https://nodejs.org) and run the command again.',
  )
  process.exitCode = INTERNAL
} else {
  start().catch((error) => {
    console.error(error.name === 'SetUpFailed' ? error.message : error)
    process.exitCode = INTERNAL
  })
}
