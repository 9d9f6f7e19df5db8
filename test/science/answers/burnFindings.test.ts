import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { burnFindings } from '#science/answers/burnFindings.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { readStove } from '#stove/document/read.ts'
import type { Opening, Stove } from '#stove/model.ts'

const example = (name: string): Stove =>
  orThrow(readStove(readFileSync(join('examples', `${name}.stove.json`), 'utf8')))

const without = (stove: Stove, part: string, opening: string): Stove => {
  const host = stove.parts.get(part)
  if (host === undefined) throw new Error(`no ${part}`)
  const openings = new Map<string, Opening>(host.openings)
  if (!openings.delete(opening)) throw new Error(`no ${opening}`)
  return { ...stove, parts: new Map(stove.parts).set(part, { ...host, openings }) }
}

const codes = (stove: Stove): readonly string[] =>
  burnFindings(stove).map(
    ({ severity, code, part, opening }) => `${severity} ${code} ${part}/${opening ?? ''}`,
  )

describe('what a prediction tells of a stove', () => {
  test('where a clean stove is choked', () => {
    expect(codes(example('heron'))).toEqual(['note areas.choke concentrator/bore'])
  })

  test('a stand without its windows smoulders, and both the tin and the fire say so', () => {
    const shut = without(example('redshank'), 'pot stand', 'windows')
    expect(codes(shut)).toEqual(['warn burn.smoulder fuel can/', 'note areas.choke pot stand/breathers'])
    const tin = checkStove(shut, null).map(({ severity, code }) => `${severity} ${code}`)
    expect(tin).toContain('warn air.no-outlet')
    expect(tin).toContain('warn areas.outlet-small')
  })

  test('a stove whose air is shut off has no burn to speak of', () => {
    const shut = without(example('redshank'), 'shell', 'intake')
    expect(codes(shut).some((found) => found.startsWith('warn burn.'))).toBe(true)
  })

  test('a fuel nobody knows is left to the reading of the fuel', () => {
    const stove = example('heron')
    expect(burnFindings({ ...stove, fuel: { ...stove.fuel, kind: 'wet hay' } })).toEqual([])
  })
})
