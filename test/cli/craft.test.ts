import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { orThrow, type Problem } from '#basis/problem.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { Outlook } from '#craft/shop/outlook.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { readStove } from '#stove/document/read.ts'
import { changed, exampleFiles, exampleStoves, flat, tinwright } from './memory.ts'

const STOVE = 'redshank.stove.json'
const SHEET = 'redshank.built.json'

/** The example shelf without some of its bits. */
const poorShelf = (...without: readonly string[]): string => {
  const shelf = JSON.parse(exampleFiles['shelf.json'] as string) as { bits: unknown[] }
  return JSON.stringify({ ...shelf, bits: shelf.bits.filter((bit) => !without.includes(bit as string)) })
}

const firepowerOf = (text: string): number => {
  const outcome = orThrow(predictSteady(orThrow(readStove(text))))
  if (outcome.kind !== 'prediction') throw new Error('does not burn')
  return outcome.prediction.woodGas.firepower
}

describe('tinwright shop', () => {
  const files = { ...exampleFiles, 'poor.json': poorShelf('4 mm', '7 mm') }

  it('ends with 1 where a bit has to be bought, and says what the nearest owned one does', async () => {
    const { code, out } = await tinwright(['shop', STOVE, '--shelf', 'poor.json'], files)
    expect(code).toBe(1)
    expect(flat(out)).toContain('4 mm (5/32 in), for 19 holes of “floor” on “fuel can”')
    expect(flat(out)).toMatch(/or 5 mm \(13\/64 in\), 12 instead of 19 .*1\.3 % less area; firepower/)
  })

  it('ends with 0 where every bit is owned', async () => {
    for (const file of exampleStoves)
      expect((await tinwright(['shop', file, '--shelf', 'shelf.json'], files)).code).toBe(0)
  })

  it('really solves the stove with the other bit: the same as the stove file with that bit written in', async () => {
    const { out } = await tinwright(['shop', STOVE, '--shelf', 'poor.json', '--json'], files)
    const { missing, outlook } = JSON.parse(out) as {
      outlook: Outlook
      missing: readonly {
        name: string
        instead: readonly { instead: { name: string }; manner: string; outlook: Outlook }[]
      }[]
    }
    expect(outlook.figures?.firepower).toBe(firepowerOf(exampleFiles[STOVE] as string))
    const floor = missing.find(({ name }) => name === '4 mm')
    const five = floor?.instead.find((one) => one.instead.name === '5 mm' && one.manner === 'same count')
    const rewritten = changed(STOVE, (stove) => {
      const parts = stove.parts as unknown as Record<string, { openings: Record<string, { hole: unknown }> }>
      const opening = parts['fuel can']?.openings.floor
      if (opening !== undefined) opening.hole = { bit: '5 mm' }
    })
    expect(five?.outlook.figures?.firepower).toBeGreaterThan(outlook.figures?.firepower ?? 0)
    // The margin is kept by the file, the places by the swap: the holes move by half a millimetre.
    expect(five?.outlook.figures?.firepower).toBeCloseTo(firepowerOf(rewritten), 0)
  })
})

describe('tinwright steps', () => {
  it('writes a picture a step, named in order, and says where each is', async () => {
    const { code, out, written } = await tinwright(['steps', STOVE, '--out', 'out/steps'], exampleFiles)
    expect(code).toBe(0)
    const names = [...written.keys()]
    expect(names[0]).toBe('out/steps/01-gather.svg')
    expect(names).toEqual([...names].sort())
    for (const name of names) expect(flat(out)).toContain(`Picture: ${name}`)
    for (const bytes of written.values()) {
      const svg = new TextDecoder().decode(bytes)
      expect(svg).toMatch(/^<svg /)
      for (const caution of MAKING_CAUTIONS) expect(svg).toContain(caution)
    }
    expect(out).toMatch(new RegExp(`^Redshank: ${names.length} steps`))
  })

  it('says in JSON what each step makes, places and measures', async () => {
    const { out } = await tinwright(['steps', STOVE, '--json'], exampleFiles)
    const { steps } = JSON.parse(out) as {
      steps: readonly {
        number: number
        makes: readonly unknown[]
        places: string | null
        cautions: readonly string[]
      }[]
    }
    expect(steps.map(({ number }) => number)).toEqual(steps.map((_, index) => index + 1))
    expect(steps.flatMap(({ makes }) => makes)).toHaveLength(8)
    expect(steps.flatMap(({ places }) => places ?? [])).toHaveLength(5)
    for (const { cautions } of steps) expect(cautions.length).toBeGreaterThan(0)
  })
})

describe('tinwright sheets', () => {
  it.each(exampleStoves)(
    '%s: a PDF of a trial sheet and as-built sheets, with what is predicted',
    async (file) => {
      const { code, out, written } = await tinwright(
        ['sheets', file, '--paper', 'Letter', '--json'],
        exampleFiles,
      )
      expect(code).toBe(0)
      const { pages, path, prediction, missingLetters } = JSON.parse(out) as {
        pages: number
        path: string
        prediction: Record<string, string>
        missingLetters: readonly string[]
      }
      expect(pages).toBeGreaterThanOrEqual(3)
      expect(missingLetters).toEqual([])
      expect(prediction.fuel).toMatch(/^[\d.]+ g \([\d.]+ oz\)$/)
      expect(prediction.boil).toMatch(/ L, .* after lighting$/)
      expect(new TextDecoder('latin1').decode(written.get(path)?.slice(0, 5))).toBe('%PDF-')
      const again = await tinwright(['sheets', file, '--paper', 'Letter', '--json'], exampleFiles)
      expect(again.written.get(path)).toEqual(written.get(path))
    },
  )
})

describe('tinwright built', () => {
  it('solves the stove both as planned and as built', async () => {
    const { out } = await tinwright(
      ['built', STOVE, SHEET, '--json', '--out', 'out/built.stove.json'],
      exampleFiles,
    )
    const { prediction } = JSON.parse(out) as { prediction: { plan: Outlook; built: Outlook } }
    expect(prediction.plan.figures?.firepower).toBe(firepowerOf(exampleFiles[STOVE] as string))
    expect(prediction.built.figures?.firepower).not.toBe(prediction.plan.figures?.firepower)
  })

  it('writes the stove as built as a stove file that says where it comes from and predicts the same', async () => {
    const args = ['built', STOVE, SHEET, '--out', 'out/built.stove.json', '--json']
    const { out, written } = await tinwright(args, exampleFiles)
    const text = new TextDecoder().decode(written.get('out/built.stove.json'))
    const stove = orThrow(readStove(text))
    expect(stove.name).toBe('Redshank, as built')
    expect(stove.about).toContain('The stove “Redshank” as measured after building')
    const { prediction } = JSON.parse(out) as { prediction: { built: Outlook } }
    expect(firepowerOf(text)).toBe(prediction.built.figures?.firepower)
    // Check, templates and the rest take it like any other.
    for (const command of ['check', 'templates', 'steps', 'shop'])
      expect((await tinwright([command, 'built.json'], { 'built.json': text })).code).toBeLessThan(2)
  })

  it('--blank writes a sheet that is read back as the plan', async () => {
    for (const file of exampleStoves) {
      const { code, written } = await tinwright(
        ['built', file, '--blank', '--out', 'out/sheet.json'],
        exampleFiles,
      )
      expect(code).toBe(0)
      const sheet = new TextDecoder().decode(written.get('out/sheet.json'))
      const read = await tinwright(['built', file, 'sheet.json', '--json'], {
        ...exampleFiles,
        'sheet.json': sheet,
      })
      expect(read.code).toBe(0)
      expect(JSON.parse(read.out)).toMatchObject({ differences: [], remarks: [] })
    }
  })

  it('--blank without --out is the sheet itself, to be sent into a file', async () => {
    const { out } = await tinwright(['built', STOVE, '--blank'], exampleFiles)
    expect(JSON.parse(out)).toMatchObject({ format: 'tinwright/built@1', stove: 'Redshank' })
  })

  const folder = fileURLToPath(new URL('../bad-built/', import.meta.url))
  it.each(readdirSync(folder))('refuses %s with a sentence, and writes nothing', async (name) => {
    const files = { ...exampleFiles, [name]: readFileSync(folder + name, 'utf8') }
    const text = await tinwright(['built', STOVE, name, '--out', 'out/x.json'], files)
    const json = await tinwright(['built', STOVE, name, '--out', 'out/x.json', '--json'], files)
    expect([text.code, json.code]).toEqual([2, 2])
    expect([text.written.size, json.written.size, text.out, json.err]).toEqual([0, 0, '', ''])
    const { problems } = JSON.parse(json.out) as { problems: readonly Problem[] }
    for (const { field, code } of problems) {
      expect(field).toContain(name)
      expect(code).toMatch(/\S/)
    }
    expect(text.err).not.toMatch(/undefined|\[object|\n {4}at /)
  })

  it('carries the cautions', async () => {
    const { out } = await tinwright(['built', STOVE, SHEET], exampleFiles)
    for (const words of ['carbon monoxide', 'Gloves', 'Never galvanised', 'may hold lead', 'not an approval'])
      expect(flat(out)).toContain(words)
  })
})
