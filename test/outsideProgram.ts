import { spawnSync } from 'node:child_process'

interface Program {
  /** Where it is not the name it goes by. */
  readonly command?: string
  readonly probe: readonly string[]
  readonly debian: string
}

/**
 * Programs of others that some tests check ours against, with how to find out whether they are here and
 * the Debian package that brings them.
 */
const PROGRAMS = {
  pdfinfo: { probe: ['-v'], debian: 'poppler-utils' },
  pdftotext: { probe: ['-v'], debian: 'poppler-utils' },
  pdftocairo: { probe: ['-v'], debian: 'poppler-utils' },
  pdftoppm: { probe: ['-v'], debian: 'poppler-utils' },
  zbarimg: { probe: ['--version'], debian: 'zbar-tools' },
  chromium: { probe: ['--version'], debian: 'chromium' },
  openssl: { probe: ['version'], debian: 'openssl' },
  ip: { probe: ['-V'], debian: 'iproute2' },
  unshare: { probe: ['--version'], debian: 'util-linux' },
  mutool: { probe: ['-v'], debian: 'mupdf-tools' },
  admesh: { probe: ['--version'], debian: 'admesh' },
  python3: { probe: ['--version'], debian: 'python3' },
  // Debian's own Python: these are installed for no other.
  scipy: { command: '/usr/bin/python3', probe: ['-c', 'import scipy'], debian: 'python3-scipy' },
  ezdxf: { command: '/usr/bin/python3', probe: ['-c', 'import ezdxf'], debian: 'python3-ezdxf' },
} as const satisfies Readonly<Record<string, Program>>

export type OutsideProgram = keyof typeof PROGRAMS

const probe = (program: OutsideProgram): string | null => {
  const { command = program, probe: asked, debian }: Program = PROGRAMS[program]
  const { error, status } = spawnSync(command, asked)
  // A module that is missing ends Python with 1; some programs end so too when asked for their version.
  return error === undefined && (command === program || status === 0)
    ? null
    : `${program} is not installed (Debian package ${debian})`
}

/** What was found of each so far in this process; the path belongs to the question. */
const found = new Map<string, string | null>()

const missing = (program: OutsideProgram): string | null => {
  const key = `${program} ${process.env.PATH}`
  const before = found.get(key)
  if (before !== undefined) return before
  const now = probe(program)
  found.set(key, now)
  return now
}

/**
 * First line of a test that reads our output with a program of others. On a person's machine the test is
 * skipped and the reason printed where the program is missing; on the build machine (`CI=true`) that is
 * a failure, or a check could go missing without anyone noticing.
 */
export const needs = (
  context: { readonly skip: (reason: string) => unknown },
  ...programs: readonly OutsideProgram[]
): void => {
  const reasons = programs.map(missing).filter((reason) => reason !== null)
  if (reasons.length === 0) return
  if (process.env.CI === 'true') throw new Error(reasons.join('; '))
  context.skip(reasons.join('; '))
}
