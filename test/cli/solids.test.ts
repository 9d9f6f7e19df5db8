import { describe, expect, it } from 'vitest'
import { admesh } from '../craft/solid/admesh.ts'
import { needs } from '../outsideProgram.ts'
import { exampleFiles, exampleStoves, flat, tinwright } from './memory.ts'

const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes)

const headerOf = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes.slice(0, 80)).trim()

describe('tinwright solids', () => {
  it('writes one 3MF file and a text beside it', async () => {
    const { written, code } = await tinwright(
      ['solids', 'redshank.stove.json', '--out', 'plan'],
      exampleFiles,
    )
    expect(code).toBe(0)
    expect([...written.keys()]).toEqual(['plan/redshank-whole.3mf', 'plan/redshank-whole-read-me.txt'])
  })

  it('writes an STL file a part, each whole by itself, that says where the cautions are', async (context) => {
    needs(context, 'admesh')
    const args = ['solids', 'greylag.stove.json', '--as', 'STL', '--arrangement', 'parts']
    const { written, out } = await tinwright(args, exampleFiles)
    const stl = [...written].filter(([path]) => path.endsWith('.stl'))
    expect(stl.map(([path]) => path)).toEqual(
      ['shell', 'lid-ring', 'fuel-can', 'grate', 'concentrator', 'pot-stand'].map(
        (part) => `out/greylag-${part}.stl`,
      ),
    )
    for (const [path, bytes] of stl) {
      expect(out).toContain(path)
      expect(admesh(bytes)).toMatchObject({ parts: 1, disconnected: 0, repairs: 0 })
      expect(headerOf(bytes)).toBe('Tinwright 0.1.0, millimetres. Cautions: see greylag-parts-read-me.txt')
    }
  })

  it.each(exampleStoves)('%s: the text beside it carries the cautions and names the files', async (file) => {
    const { written } = await tinwright(['solids', file, '--as', 'stl'], exampleFiles)
    const [stl, note] = [...written]
    expect(text(note?.[1])).toContain(stl?.[0].replace('out/', ''))
    expect(flat(text(note?.[1]))).toMatch(/carbon monoxide/)
  })

  it('says the size of every part, and its tin as the stove has it and not the mesh', async () => {
    const volume = async (chord: string): Promise<readonly number[]> => {
      const args = ['solids', 'heron.stove.json', '--chord', chord, '--json']
      const { out } = await tinwright(args, exampleFiles)
      return (JSON.parse(out) as { parts: { volume: number }[] }).parts.map((part) => part.volume)
    }
    expect(await volume('0.2 mm')).toEqual(await volume('0.02 mm'))
  })

  it.each(['stl', '3mf'])('gives the same bytes each time as %s', async (format) => {
    const bytes = async () => {
      const { written } = await tinwright(['solids', 'redshank.stove.json', '--as', format], exampleFiles)
      return [...written].map(([path, file]) => [path, Buffer.from(file).toString('base64')])
    }
    expect(await bytes()).toEqual(await bytes())
  })
})

describe('tinwright guides', () => {
  it('writes an STL file a piece, and says how to print it, put it on and drill', async () => {
    const { written, out, code } = await tinwright(['guides', 'redshank.stove.json'], exampleFiles)
    expect(code).toBe(0)
    const names = [...written.keys()]
    expect(names).toContain('out/redshank-collar-for-the-lower-holes-of-shell-1-of-2.stl')
    expect(names.at(-1)).toBe('out/redshank-drill-guides-read-me.txt')
    for (const bytes of [...written.values()].slice(0, -1))
      expect(headerOf(bytes)).toMatch(/Cautions: see redshank-drill-guides-read-me.txt$/)
    const note = flat(text(written.get(names.at(-1) as string)))
    for (const said of [flat(out), note]) {
      expect(said).toMatch(/without supports/)
      expect(said).toMatch(/damper, windows: A band is drilled and cut flat/)
      expect(said).toMatch(/carbon monoxide/)
    }
  })

  it('takes one part, another pilot in inches, a wall and a clearance', async () => {
    const args = ['guides', 'redshank.stove.json', '--part', 'shell', '--pilot', '1/8 in', '--wall', '10 mm']
    const { out } = await tinwright([...args, '--clearance', '0.5 mm', '--json'], exampleFiles)
    const { guides } = JSON.parse(out) as {
      guides: { part: string; fitDiameter: number; box: number[]; holes: { diameter: number }[] }[]
    }
    expect(guides.map(({ part }) => part)).toEqual(['shell'])
    // 100.4 mm with 0.3 mm of tolerance and 0.5 mm of clearance.
    expect(guides[0]?.fitDiameter).toBeCloseTo(0.1012, 9)
    expect(guides[0]?.holes[0]?.diameter).toBeCloseTo(0.003375, 9)
  })

  it('ends with 1 and says why where a guide could not be made, the others written', async () => {
    const args = ['guides', 'greylag.stove.json', '--bed', '160 mm x 160 mm']
    const { code, out, written } = await tinwright(args, exampleFiles)
    expect(code).toBe(1)
    expect(written.size).toBeGreaterThan(3)
    expect(flat(out)).toMatch(/guide for the face of lid ring: a disc 165 mm across .* will not do/)
  })

  it('lays pieces of a 3MF file side by side', async () => {
    const { written } = await tinwright(['guides', 'redshank.stove.json', '--as', '3mf'], exampleFiles)
    expect([...written.keys()]).toEqual([
      'out/redshank-drill-guides.3mf',
      'out/redshank-drill-guides-read-me.txt',
    ])
  })
})
