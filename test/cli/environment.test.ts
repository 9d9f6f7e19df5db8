import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { nodeEnvironment } from '#cli/environment.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tinwright-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

describe('writing a file', () => {
  it('makes the folders on the way and says the path', () => {
    const path = nodeEnvironment().write(join(folder, 'plan', 'may'), 'a.pdf', bytes('one'))
    expect(path).toBe(join(folder, 'plan', 'may', 'a.pdf'))
    expect(readFileSync(path, 'utf8')).toBe('one')
  })

  it('puts the new one in the place of the old one, and leaves all others alone', () => {
    const { write } = nodeEnvironment()
    writeFileSync(join(folder, 'mine.txt'), 'mine')
    writeFileSync(join(folder, 'b.pdf'), 'another')
    write(folder, 'a.pdf', bytes('one, and longer'))
    write(folder, 'a.pdf', bytes('two'))
    const texts = readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'utf8')])
    expect(Object.fromEntries(texts)).toEqual({ 'a.pdf': 'two', 'b.pdf': 'another', 'mine.txt': 'mine' })
  })

  it('leaves no half-written file behind where it fails', () => {
    const { write } = nodeEnvironment()
    mkdirSync(join(folder, 'a.pdf'))
    expect(() => write(folder, 'a.pdf', bytes('one'))).toThrow(/EISDIR/)
    expect(readdirSync(folder)).toEqual(['a.pdf'])
    expect(readdirSync(join(folder, 'a.pdf'))).toEqual([])
  })

  it('fails, and ends, where a file stands in for the folder or no folder can be', () => {
    const { write } = nodeEnvironment()
    writeFileSync(join(folder, 'file'), 'mine')
    expect(() => write(join(folder, 'file'), 'a.pdf', bytes('one'))).toThrow(/ENOTDIR|EEXIST/)
    expect(() => write(join(folder, 'file', 'deeper'), 'a.pdf', bytes('one'))).toThrow(
      /ENOTDIR|EEXIST|ENOENT/,
    )
    expect(readFileSync(join(folder, 'file'), 'utf8')).toBe('mine')
  })
})

describe('the width of the page', () => {
  const columns = process.env.COLUMNS
  afterEach(() => {
    if (columns === undefined) delete process.env.COLUMNS
    else process.env.COLUMNS = columns
  })

  it.each([
    ['72', 72],
    ['400', 100],
    ['3', 40],
    ['', 80],
    ['wide', 80],
  ])('with COLUMNS=%s and no terminal: %i', (said, width) => {
    process.env.COLUMNS = said
    if (process.stdout.columns === undefined && process.stderr.columns === undefined)
      expect(nodeEnvironment().width).toBe(width)
    else expect(nodeEnvironment().width).toBeLessThanOrEqual(100)
  })
})

it('today is a day of the calendar', () => {
  expect(nodeEnvironment().today()).toMatch(/^20\d\d-[01]\d-[0-3]\d$/)
})
