import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Environment } from '#cli/environment.ts'
import { type Machine, namedPlace, workshopPlace } from '#cli/workshopPlace.ts'
import { openWorkshop } from '#store/open.ts'
import { exampleFiles, flat, tinwright } from './memory.ts'

let folder: string
let own: Partial<Environment>
let file: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tinwright-cli-'))
  file = join(folder, 'home', 'workshop.tinwright')
  own = at(file)
})
afterEach(() => rmSync(folder, { recursive: true }))

let ids = 0
const at = (path: string): Partial<Environment> => ({
  newId: () => `id-${++ids}`,
  readBytes: (name) =>
    name in exampleFiles ? new TextEncoder().encode(exampleFiles[name]) : new Uint8Array(readFileSync(name)),
  write: (into, name, bytes) => {
    mkdirSync(into, { recursive: true })
    writeFileSync(join(into, name), bytes)
    return join(into, name)
  },
  workshop: (begin, named) =>
    openWorkshop(named === undefined ? { file: path } : namedPlace(named), {
      at: '2031-05-17T14:05:00Z',
      beginAs: begin ? 'workshop-1' : null,
    }),
})

const run = (...args: readonly string[]) => tinwright(['workshop', ...args], {}, own)

describe('tinwright workshop', () => {
  it('imports files, lists them, exports all, and brings it into another workshop', async () => {
    expect(await run('import', 'heron.stove.json')).toMatchObject({
      code: 0,
      out: '1 new, 0 brought up to date, 0 here already\n',
      err: '',
    })
    expect((await run('import', 'shelf.json')).out).toContain('21 new')
    expect((await run('import', 'shelf.json')).out).toContain('21 here already')
    const { out } = await run('list')
    expect(out).toContain(': 22 things')
    expect(out).toMatch(/^ {2}stove {2}2031-05-17 {2}Heron$/m)
    const archive = join(folder, 'out', 'all.zip')
    expect((await run('export', archive)).out).toContain(`${archive}: 22 things in 22 revisions, 0 photos`)

    own = at(join(folder, 'other', 'workshop.tinwright'))
    expect(flat((await run('import', archive)).out)).toContain('22 new, 0 brought up to date, 0 here already')
    expect((await run('list')).out).toContain('Heron')
    expect(flat((await run('import', archive)).out)).toContain('0 new, 0 brought up to date, 22 here already')
  })

  it('imports trials beside their stoves, in whatever order they are told, and says where one may not belong', async () => {
    const series = join(import.meta.dirname, '..', '..', 'examples', 'series')
    const burn = join(series, 'burn-01.trial.json')
    const early = await run('import', burn)
    expect([early.code, early.out]).toEqual([2, ''])
    expect(flat(early.err)).toContain(
      'no stove here fits. Nothing was changed. Bring in its stove file first',
    )
    await run('import', join(series, 'heron-d.stove.json'))
    for (const [said, count] of [
      ['1 new, 0 brought up to date, 0 here already', 2],
      ['0 new, 0 brought up to date, 1 here already', 2],
    ] as const) {
      expect((await run('import', burn)).out).toBe(`${said}\n`)
      expect((await run('list')).out).toContain(`: ${count} things`)
    }
    const other = JSON.parse(readFileSync(burn, 'utf8').replaceAll('heron-01-', 'another-'))
    const path = join(folder, 'other.trial.json')
    writeFileSync(path, JSON.stringify({ ...other, stove: { ...other.stove, revision: 'f'.repeat(64) } }))
    const { out } = await run('import', path)
    expect(flat(out)).toMatch(
      /^1 new, .*other\.trial\.json names a revision of .* that is not here; it lies with “Heron D/,
    )
    expect(JSON.parse((await run('import', path, '--json')).out)).toMatchObject({ added: [], remarks: [] })
  })

  it('answers in JSON', async () => {
    await run('import', 'heron.stove.json')
    const listed = JSON.parse((await run('list', '--json')).out)
    expect(listed).toMatchObject({ workshop: { format: 1 }, documents: [{ kind: 'stove', name: 'Heron' }] })
    const archive = join(folder, 'all.zip')
    expect(JSON.parse((await run('export', archive, '--json')).out)).toMatchObject({
      path: archive,
      documents: 1,
    })
    expect(JSON.parse((await run('import', archive, '--json')).out)).toMatchObject({ added: 0, kept: 1 })
  })

  it('exports one stove or the shelf as the plain file that it came from, and says which it cannot tell apart', async () => {
    await run('import', 'heron.stove.json')
    await run('import', 'shelf.json')
    const out = join(folder, 'out', 'mine.json')
    expect(await run('export', out, '--only', 'Heron')).toMatchObject({ code: 0, out: `${out}\n`, err: '' })
    expect(readFileSync(out, 'utf8')).toBe(exampleFiles['heron.stove.json'])
    expect((await run('import', out)).out).toContain('1 here already')
    await run('export', out, '--only', 'shelf')
    expect((await run('import', out)).out).toContain('21 here already')

    const nobody = await run('export', out, '--only', 'Dodo')
    expect(nobody.code).toBe(2)
    expect(flat(nobody.err)).toContain('Dodo will not do; allowed is the name of a stove or a trial')
    const twin = join(folder, 'twin.json')
    writeFileSync(twin, (exampleFiles['heron.stove.json'] as string).replace('"80 mm"', '"82 mm"'))
    await run('import', twin)
    const twins = await run('export', out, '--only', 'Heron')
    expect(flat(twins.err)).toContain(
      'Heron, which 2 things are called, will not do; allowed is one of stove Heron (',
    )
    const [, id] = /stove Heron \(([^)]+)\)/.exec(flat(twins.err)) ?? []
    expect(await run('export', out, '--only', String(id))).toMatchObject({ code: 0 })
    expect(flat((await run('list', '--only', 'Heron')).err)).toContain('allowed is only with export')
  })

  it('takes the workshop that is named instead of the usual one, as the bench does', async () => {
    const named = join(folder, 'friend', 'club.tinwright')
    await run('import', 'heron.stove.json', '--workshop', named)
    expect(existsSync(file)).toBe(false)
    expect(JSON.parse((await run('list', '--json', '--workshop', named)).out).documents).toMatchObject([
      { name: 'Heron' },
    ])
    const archive = join(folder, 'club.zip')
    await run('export', archive, '--workshop', named)
    expect((await run('import', archive)).out).toContain('1 new')
    expect((await run('list')).out).toContain(`${file}: 1 thing`)
  })

  it('makes no workshop to look at, and says that there is none', async () => {
    for (const args of [['list'], ['export', join(folder, 'all.zip')]]) {
      const { code, out, err } = await run(...args)
      expect({ code, out }).toEqual({ code: 2, out: '' })
      expect(flat(err)).toContain(`There is no workshop at ${file}`)
    }
    expect(existsSync(dirname(file))).toBe(false)
    expect(existsSync(join(folder, 'all.zip'))).toBe(false)
  })

  it('says in a sentence what it will not do', async () => {
    const text = join(folder, 'notes.txt')
    writeFileSync(text, 'not a stove')
    const zip = join(folder, 'bad.zip')
    writeFileSync(zip, 'PK, but no archive')
    for (const [args, said] of [
      [['burn'], 'allowed is list, export FILE or import FILE'],
      [['list', 'what'], 'allowed is list, export FILE or import FILE'],
      [['export'], 'allowed is list, export FILE or import FILE'],
      [['import', join(folder, 'nobody')], 'There is no such file'],
      [['import', text], 'notes.txt will not do, and nothing was changed'],
      [['import', zip], 'The archive is damaged'],
    ] as const) {
      const { code, out, err } = await run(...args)
      expect({ code, out }).toEqual({ code: 2, out: '' })
      expect(flat(err)).toContain(said)
    }
  })
})

describe('where the workshop is', () => {
  const machine = (own: Partial<Machine>): Machine => ({
    platform: 'linux',
    home: '/home/maker',
    variables: {},
    ...own,
  })

  it('is the folder for data of the system, unless the maker says otherwise', () => {
    expect(workshopPlace(machine({}))).toEqual({
      file: '/home/maker/.local/share/tinwright/workshop.tinwright',
    })
    expect(workshopPlace(machine({ variables: { XDG_DATA_HOME: '/data' } }))).toEqual({
      file: '/data/tinwright/workshop.tinwright',
    })
    expect(workshopPlace(machine({ platform: 'darwin', home: '/Users/maker' }))).toEqual({
      file: '/Users/maker/Library/Application Support/Tinwright/workshop.tinwright',
    })
    expect(workshopPlace(machine({ platform: 'win32', variables: { APPDATA: '/roaming' } }))).toEqual({
      file: '/roaming/Tinwright/workshop.tinwright',
    })
    const variables = { TINWRIGHT_HOME: '/mine' }
    expect(workshopPlace(machine({ variables }))).toEqual({ file: '/mine/workshop.tinwright' })
    const server = 'postgres://club/stoves'
    expect(workshopPlace(machine({ variables: { ...variables, TINWRIGHT_DB: server } }))).toEqual({ server })
  })
})
