import { afterEach, describe, expect, it, vi } from 'vitest'
import { needs } from '../outsideProgram.ts'

afterEach(() => vi.unstubAllEnvs())

describe('a test that needs an outside program that is not installed', () => {
  const REASON = 'mutool is not installed (Debian package mupdf-tools)'

  it('is skipped on a person’s machine, with the reason', () => {
    vi.stubEnv('PATH', '')
    vi.stubEnv('CI', '')
    const reasons: unknown[] = []
    needs({ skip: (reason) => reasons.push(reason) }, 'mutool')
    expect(reasons).toEqual([REASON])
  })

  it('fails on the build machine', () => {
    vi.stubEnv('PATH', '')
    vi.stubEnv('CI', 'true')
    expect(() => needs({ skip: () => undefined }, 'mutool')).toThrow(REASON)
  })
})
