import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { needs } from '../outsideProgram.ts'
import { badFiles, flat } from './memory.ts'
import { spoiltStoves } from './spoilt.ts'

const checkout = fileURLToPath(new URL('../../', import.meta.url))
const example = join(checkout, 'examples', 'redshank.stove.json')

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tinwright-'))
  for (const [name, text] of Object.entries({ ...badFiles, ...spoiltStoves }))
    writeFileSync(join(folder, name), text)
})
afterAll(() => rmSync(folder, { recursive: true }))

/** As a maker runs it, from a folder of their own. */
const tinwright = (...args: readonly string[]) =>
  spawnSync(process.execPath, [join(checkout, 'bin', 'tinwright.js'), ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, COLUMNS: '80' },
  })

describe('bin/tinwright.js, in a folder of the maker', () => {
  it('checks and predicts an example: 0', () => {
    for (const command of ['check', 'predict']) {
      const { status, stdout, stderr } = tinwright(command, example)
      expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
      expect(stdout).toMatch(/^Redshank: /)
    }
  })

  it('says 1 of a stove that cannot be put together', () => {
    expect(tinwright('check', 'stop.json').status).toBe(1)
  })

  it('prints JSON that can be read, and nothing else', () => {
    const { status, stdout } = tinwright('predict', example, '--json')
    expect(status).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({ stove: 'Redshank', kind: 'prediction' })
  })

  it('writes one PDF and nothing beside it, where it is told to', (context) => {
    needs(context, 'pdfinfo')
    const { status, stdout } = tinwright('templates', example, '--paper', 'letter', '--out', 'plan')
    expect(status).toBe(0)
    expect(readdirSync(join(folder, 'plan'))).toEqual(['redshank-templates-letter.pdf'])
    const info = spawnSync('pdfinfo', [join(folder, 'plan', 'redshank-templates-letter.pdf')], {
      encoding: 'utf8',
    })
    expect(info.stdout).toMatch(/Page size: +612 x 792 pts \(letter\)/)
    const [, pages] = /Pages: +(\d+)/.exec(info.stdout) ?? []
    expect(stdout).toContain(`${pages} pages of Letter`)
  })

  it.each(['a-billion-holes.txt', 'cut-short.txt', 'dual-mismatch.txt', 'nowhere.json', '.'])(
    'refuses %s with 2 and makes no folder',
    (file) => {
      const before = readdirSync(folder)
      const { status, stdout, stderr } = tinwright('templates', file, '--out', 'never')
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
      expect(flat(stderr)).toContain('will not do; allowed is')
      expect(readdirSync(folder)).toEqual(before)
    },
  )

  it('leaves the old PDF whole where a new one cannot be made', () => {
    expect(tinwright('templates', example, '--out', 'kept').status).toBe(0)
    const path = join(folder, 'kept', 'redshank-templates-a4.pdf')
    const before = readFileSync(path)
    expect(tinwright('templates', 'dual-mismatch.txt', '--out', 'kept').status).toBe(2)
    expect(tinwright('templates', example, '--out', 'kept', '--date', 'some day').status).toBe(2)
    expect(readFileSync(path).equals(before)).toBe(true)
    expect(readdirSync(join(folder, 'kept'))).toEqual(['redshank-templates-a4.pdf'])
  })

  it('does not mind a reader who has gone', async () => {
    const child = spawn(process.execPath, [join(checkout, 'bin', 'tinwright.js'), 'cans', '--json'], {
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    child.stdout.destroy()
    let err = ''
    child.stderr.on('data', (text) => {
      err += String(text)
    })
    const [code] = await once(child, 'close')
    expect({ code, err }).toEqual({ code: 0, err: '' })
  })
})
