import { describe, expect, it } from 'vitest'
import { pngSize } from '#craft/card/png.ts'
import { exampleFiles, flat, tinwright } from './memory.ts'
import { spoiltStoves } from './spoilt.ts'

const STOVE = 'redshank.stove.json'
const QUICK = ['--bands', '0']

interface Answer {
  readonly cards: readonly {
    readonly part: string | null
    readonly shape: string
    readonly width: number
    readonly height: number
    readonly files: readonly string[]
  }[]
  readonly list: string
  readonly text: string
  readonly noBurn: { readonly sentence: string } | null
}

const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes)

describe('tinwright cards', () => {
  it('writes every card in both shapes as SVG and as PNG, and the list', async () => {
    const args = ['cards', STOVE, '--out', 'post', ...QUICK]
    const { code, out, written } = await tinwright(args, exampleFiles)
    expect(code).toBe(0)
    const paths = [...written.keys()]
    const list = 'post/redshank-sizes.txt'
    expect(paths).toContain(list)
    for (const name of ['stove', 'shell', 'fuel-can', 'concentrator', 'damper', 'pot-stand'])
      for (const shape of ['wide', 'square'])
        for (const format of ['svg', 'png'])
          expect(
            paths.some((path) => path.match(`^post/redshank-\\d\\d-${name}-${shape}\\.${format}$`)),
          ).toBe(true)
    for (const [path, bytes] of written) {
      if (path.endsWith('.svg')) expect(text(bytes)).toMatch(/^<svg /)
      if (path.endsWith('.png'))
        expect(pngSize(bytes)).toEqual(
          path.includes('-wide.') ? { width: 1920, height: 1080 } : { width: 1080, height: 1080 },
        )
    }
    expect(flat(out)).toContain(`${list}: every size`)
    expect(out).toContain(`${(paths.length - 1) / 2} cards of Redshank in post`)
  })

  it('writes only what was asked for, and says in JSON where', async () => {
    const args = ['cards', STOVE, '--shape', 'square', '--as', 'SVG', '--json', ...QUICK]
    const { out, written } = await tinwright(args, exampleFiles)
    const answer = JSON.parse(out) as Answer
    expect(answer.cards.flatMap(({ files }) => files).concat(answer.list)).toEqual([...written.keys()])
    for (const { shape, width, height, files } of answer.cards) {
      expect({ shape, width, height }).toEqual({ shape: 'square', width: 1080, height: 1080 })
      expect(files.map((file) => file.replace(/.*\./, ''))).toEqual(['svg'])
    }
    expect(text(written.get(answer.list))).toBe(answer.text)
    expect(answer.noBurn).toBeNull()
  })

  it('draws in the dark, and bears the day', async () => {
    const of = async (...more: readonly string[]): Promise<string> => {
      const args = ['cards', STOVE, '--shape', 'wide', '--as', 'svg', ...QUICK, ...more]
      const { written } = await tinwright(args, exampleFiles)
      return [...written.values()].map(text).join('')
    }
    const plain = await of()
    expect(await of('--theme', 'light', '--date', '2031-05-17')).toBe(plain)
    expect(await of('--theme', 'dark')).not.toBe(plain)
    expect(await of('--date', '2031-05-18')).not.toBe(plain)
  })

  it('draws a stove that does not burn without figures, says why, and ends with 1', async () => {
    const files = { ...exampleFiles, ...spoiltStoves }
    const args = ['cards', 'no-floor.json', '--as', 'svg', ...QUICK]
    const { code, out } = await tinwright(args, files)
    const json = await tinwright([...args, '--json'], files)
    const { noBurn, cards, text: list } = JSON.parse(json.out) as Answer
    expect([code, json.code]).toEqual([1, 1])
    expect(cards.length).toBeGreaterThan(0)
    expect(list).not.toContain('Predicted')
    expect(flat(out)).toContain(`The cards say no figures of a burn: ${noBurn?.sentence}`)
  })

  it('says which folder it cannot write into', async () => {
    const { code, err } = await tinwright(['cards', STOVE, '--as', 'svg', ...QUICK], exampleFiles, {
      write: () => {
        throw Object.assign(new Error('ENOTDIR'), { code: 'ENOTDIR' })
      },
    })
    expect(code).toBe(2)
    expect(flat(err)).toContain('A file stands where the folder should be')
  })
})
