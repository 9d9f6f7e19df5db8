import { describe, expect, it } from 'vitest'
import { type Problem, problemSentence } from '#basis/problem.ts'
import { badFiles, flat, tinwright } from './memory.ts'

const names = Object.keys(badFiles)

it('there are twenty bad files and more', () => {
  expect(names.length).toBeGreaterThanOrEqual(20)
})

describe.each([
  'check',
  'predict',
  'burn',
  'templates',
  'cards',
  'solids',
  'guides',
  'fit',
  'shop',
  'steps',
  'sheets',
])('tinwright %s refuses', (command) => {
  it.each(names)('%s: a sentence for every problem, 2, and nothing written', async (file) => {
    const json = await tinwright([command, file, '--json'], badFiles)
    const text = await tinwright([command, file], badFiles)
    for (const { code, written } of [json, text]) {
      expect(code).toBe(2)
      expect([...written.keys()]).toEqual([])
    }

    expect(json.err).toBe('')
    const { problems } = JSON.parse(json.out) as { readonly problems: readonly Problem[] }
    expect(problems.length).toBeGreaterThan(0)
    for (const problem of problems) {
      for (const part of [problem.code, problem.field, problem.value, problem.allowed, problem.fix])
        expect(part).toMatch(/\S/)
      expect(problem.field).toContain(file)
    }

    expect(text.out).toBe('')
    for (const problem of problems) expect(flat(text.err)).toContain(flat(problemSentence(problem)))
    expect(text.err.split('\n').filter((line) => line !== '' && !line.startsWith(' '))).toHaveLength(
      problems.length,
    )
    expect(text.err).not.toMatch(/undefined|\[object|\n {4}at /)
  })
})
