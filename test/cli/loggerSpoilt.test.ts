import { expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { spoilt } from '../proof/logger/spoiling.ts'
import { truths } from '../proof/logger/truths.ts'
import { loggerTrial } from './loggerTrial.ts'
import { loggerFiles, tinwright } from './memory.ts'

// What is read of spoilt files is judged in test/proof/logger; here the page has to stand it.
it('1 000 spoilt files: an answer, a question or a refusal, in lines that fit, and never broken', async () => {
  const stream = randomStream(7)
  const codes = new Map<number, number>()
  for (let n = 0; n < 1000; n++) {
    const { name, answers } = stream.pick(truths)
    const lines = (loggerFiles[name] as string).split(/\r\n|\n|\r/).map((text) => ({ text, head: false }))
    const file = spoilt(lines, stream)
      .map(({ text }) => text)
      .join('\n')
    const given = Object.entries(answers).flatMap(([key, choice]) => ['--answer', `${key}=${choice}`])
    const trial = stream.uniform() < 0.3 ? ['--trial', 'trial.json', '--part', '1'] : []
    const files = { 'log.csv': file, 'trial.json': JSON.stringify(loggerTrial) }
    const { code, out, err, written } = await tinwright(
      ['logger', 'log.csv', ...given, ...trial, '--csv', 'out/r.csv'],
      files,
    )
    expect([0, 1, 2], `${err}\n${file}`).toContain(code)
    expect(written.size).toBe(code === 0 ? 1 : 0)
    const page = code === 2 ? err : out
    // "NaN" is among what files are spoilt with, and is shown as it stands.
    expect(page).not.toMatch(file.includes('NaN') ? /undefined|Infinity/ : /undefined|NaN|Infinity|\[object/)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what must not reach a terminal
    expect(page).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/)
    expect(page.split('\n').filter((line) => line.length > 80)).toEqual([])
    codes.set(code, (codes.get(code) ?? 0) + 1)
  }
  // All three ways of ending are tried.
  for (const code of [0, 1, 2]) expect(codes.get(code) ?? 0).toBeGreaterThan(20)
})
