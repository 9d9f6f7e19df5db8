import { describe, expect, it } from 'vitest'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { exampleFiles, exampleStoves, tinwright } from './memory.ts'

interface AnswerFile {
  readonly path: string
  readonly format: string
  readonly title: string
  readonly pages: number
}

interface Answer {
  readonly paper: string
  readonly files: readonly AnswerFile[]
  readonly cautions: readonly string[]
}

const textOf = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes)

const isPdf = (bytes: Uint8Array | undefined): boolean =>
  bytes !== undefined && new TextDecoder('latin1').decode(bytes.slice(0, 5)) === '%PDF-'

describe('tinwright templates', () => {
  it.each(exampleStoves)('%s: one PDF, in the folder asked for, its path and pages said', async (file) => {
    const { written, out } = await tinwright(['templates', file, '--out', 'plan/may'], exampleFiles)
    const json = await tinwright(['templates', file, '--out', 'plan/may', '--json'], exampleFiles)
    const [path] = [...written.keys()]
    const answer = JSON.parse(json.out) as Answer
    expect(written.size).toBe(1)
    expect(path).toMatch(/^plan\/may\/.*-templates-a4\.pdf$/)
    expect(isPdf(written.get(path as string))).toBe(true)
    expect(answer).toMatchObject({ paper: 'A4', files: [{ path, format: 'pdf' }] })
    expect(out).toContain(`${path}: ${answer.files[0]?.pages} pages of A4, true size`)
  })

  it.each([
    ['A4', 'A4'],
    ['a4', 'A4'],
    ['Letter', 'Letter'],
    ['letter', 'Letter'],
    ['LETTER', 'Letter'],
    ['a3', 'A3'],
  ])('takes the paper %s for %s, and names the file by it', async (said, paper) => {
    const args = ['templates', 'redshank.stove.json', '--paper', said, '--json']
    const { out, written } = await tinwright(args, exampleFiles)
    const answer = JSON.parse(out) as Answer
    expect(answer.paper).toBe(paper)
    expect([...written.keys()]).toEqual([`out/redshank-templates-${paper.toLowerCase()}.pdf`])
  })

  it.each(exampleStoves)('%s: every drawing as SVG and as DXF, listed, with the cautions', async (file) => {
    const args = ['templates', file, '--as', 'all', '--json']
    const { written, out } = await tinwright(args, exampleFiles)
    const { files, cautions } = JSON.parse(out) as Answer
    expect(cautions).toEqual(MAKING_CAUTIONS)
    expect(files.map(({ path }) => path)).toEqual([...written.keys()])
    const titles = (format: string): readonly string[] =>
      files.flatMap((one) => (one.format === format ? [one.title] : []))
    expect(titles('pdf')).toHaveLength(1)
    expect(titles('svg').length).toBeGreaterThan(2)
    expect(titles('dxf')).toEqual(titles('svg'))
    for (const { path, format } of files) {
      if (format === 'svg') expect(textOf(written.get(path))).toMatch(/^<svg xmlns="http/)
      if (format === 'dxf') expect(textOf(written.get(path))).toMatch(/\r\nAC1009\r\n/)
    }
  })

  it('names the drawings by stove, number and title', async () => {
    const { written } = await tinwright(['templates', 'redshank.stove.json', '--as', 'DXF'], exampleFiles)
    expect([...written.keys()]).toEqual([
      'out/redshank-01-wrap-of-shell.dxf',
      'out/redshank-02-wrap-of-fuel-can.dxf',
      'out/redshank-03-bottom-of-fuel-can-from-below.dxf',
      'out/redshank-04-disc-of-concentrator-from-above.dxf',
      'out/redshank-05-flat-tin-of-damper.dxf',
      'out/redshank-06-wrap-of-pot-stand.dxf',
    ])
  })

  it.each(['pdf', 'svg', 'dxf', 'all'])('refuses a date that is none, as %s', async (format) => {
    const args = ['templates', 'redshank.stove.json', '--as', format, '--date', '2031-02-30']
    const { code, written } = await tinwright(args, exampleFiles)
    expect({ code, written: written.size }).toEqual({ code: 2, written: 0 })
  })

  it('gives the same bytes on the same day, and others on another', async () => {
    const bytes = async (...more: readonly string[]): Promise<string> => {
      const { written } = await tinwright(['templates', 'redshank.stove.json', ...more], exampleFiles)
      return Buffer.from([...written.values()][0] as Uint8Array).toString('base64')
    }
    const today = await bytes()
    expect(await bytes('--date', '2031-05-17')).toBe(today)
    expect(await bytes('--date', '2031-05-18')).not.toBe(today)
  })

  it('refuses a date before anything is written', async () => {
    const { code, written } = await tinwright(
      ['templates', 'redshank.stove.json', '--date', '17.5.2031'],
      exampleFiles,
    )
    expect({ code, written: written.size }).toEqual({ code: 2, written: 0 })
  })

  it.each(['EEXIST', 'ENOTDIR', 'EISDIR', 'EACCES', 'EROFS', 'ENOSPC', 'ENOENT', 'EWHATEVER'])(
    'says in a sentence that a folder will not do (%s)',
    async (code) => {
      const write = (): never => {
        throw Object.assign(new Error(code), { code })
      }
      const ended = await tinwright(['templates', 'redshank.stove.json', '--out', 'there'], exampleFiles, {
        write,
      })
      expect({ code: ended.code, out: ended.out }).toEqual({ code: 2, out: '' })
      expect(ended.err).toMatch(/^--out: there will not do; allowed is a folder that/)
      expect(ended.err).not.toMatch(/\n {4}at /)
    },
  )
})

describe('the file’s name', () => {
  it.each([
    ['Redshank', 'redshank'],
    ['Bell Tower No. 1', 'bell-tower-no-1'],
    ['../../etc/passwd', 'etc-passwd'],
    ['C:\\CON', 'c-con'],
    ['Ωmega 茶', 'ωmega-茶'],
    ['...', 'stove'],
    ['x'.repeat(80), 'x'.repeat(60)],
    [`${'x'.repeat(59)} y`, 'x'.repeat(59)],
  ])('%s: %s', (name, file) => {
    expect(fileNameOf(name)).toBe(file)
  })
})
