import { spawn } from 'node:child_process'
import { basename } from 'node:path'

/**
 * How to start npm: the one that runs us where there is one, else the one on the path.
 *
 * @param {NodeJS.ProcessEnv} env
 * @returns {{ command: string, before: string[], shell: boolean }}
 */
export const findNpm = (env) => {
  const script = env.npm_execpath
  if (script !== undefined && basename(script) === 'npm-cli.js') {
    return { command: env.npm_node_execpath ?? process.execPath, before: [script], shell: false }
  }
  // npm is a .cmd file on Windows, which only a shell starts.
  return { command: 'npm', before: [], shell: process.platform === 'win32' }
}

/**
 * Runs npm and keeps what it says.
 *
 * @param {string} root
 * @param {string[]} args
 * @returns {Promise<{ code: number | null, output: string, started: boolean }>}
 */
export const npm = (root, args) => {
  const { command, before, shell } = findNpm(process.env)
  return new Promise((resolve) => {
    let output = ''
    const child = spawn(command, [...before, ...args], {
      cwd: root,
      shell,
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (text) => {
        output += text
      })
    }
    child.on('error', (error) => resolve({ code: null, output: error.message, started: false }))
    child.on('close', (code) => resolve({ code, output, started: true }))
  })
}
