import { afterEach, describe, expect, it, vi } from 'vitest'
import { needs } from '../outsideProgram.ts'

afterEach(() => vi.unstubAllEnvs())

describe('a test that needs an outside program that is not installed', () => {
  const REASON = 'mutool is not installed (Debian package mupdf-tools)'

  it('is skipped on a person’s machine, with the reason', () => {
    vi.stubEnv('PATH', '')
    vi.stubEnv('CI', '')
    const skip = vi.fn()
    needs({ skip }, 'mutool')
    expect(skip.mock.calls).toEqual([[REASON]])
  })

  it('fails on the build machine', () => {
    vi.stubEnv('PATH', '')
    vi.stubEnv('CI', 'true')
    expect(() => needs({ skip: vi.fn() }, 'mutool')).toThrow(REASON)
  })
})
