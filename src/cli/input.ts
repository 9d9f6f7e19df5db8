import { BadInput, type Outcome, orThrow, type Problem } from '#basis/problem.ts'
import type { QuantityKey } from '#basis/quantities.ts'
import { readQuantity } from '#basis/text/read.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import { readMapping } from '#proof/logger/mappingFile.ts'
import type { Trial } from '#proof/trial/model.ts'
import { readTrial } from '#proof/trial/read.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { type Built, readBuilt } from '#stove/built/read.ts'
import { isPlanCode, readPlanCode } from '#stove/document/planCode.ts'
import { readStoveDocument, type StoveDocument } from '#stove/document/read.ts'
import { readShelf } from '#stove/document/shelf.ts'
import type { Shelf, Stove } from '#stove/model.ts'
import type { Environment } from './environment.ts'

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'There is no such file. Look at the name and the folder.',
  EACCES: 'The file may not be read. Look at its permissions.',
  EISDIR: 'That is a folder. Name a file in it.',
}

const orProblem = <T>(read: (path: string) => T, path: string, field: string): T => {
  try {
    return read(path)
  } catch (error) {
    const code = (error as { readonly code?: string }).code ?? ''
    throw new BadInput([
      {
        code: 'file.unreadable',
        field,
        value: path,
        allowed: 'the path of a file that can be read',
        fix: reasons[code] ?? `It could not be read (${code || String(error)}).`,
      },
    ])
  }
}

/** Text of a file, or a problem that names it. */
export const readFile = (env: Environment, path: string, field: string): string =>
  orProblem(env.readText, path, field)

/** Bytes of a file, likewise. */
export const readFileBytes = (env: Environment, path: string, field: string): Uint8Array =>
  orProblem(env.readBytes, path, field)

/** Puts the file's name before every field, so that a message says where to look. */
export const inFile = <T>(path: string, outcome: Outcome<T>): T => {
  if (outcome.ok) return outcome.value
  throw new BadInput(
    outcome.problems.map((problem) => ({
      ...problem,
      field: problem.field === '' ? path : `${path}: ${problem.field}`,
    })),
  )
}

/** The stove of a file, or of the code of a printed plan in one; its fuel among those known: a file is refused by every command or by none. */
export const stoveFrom = (env: Environment, path: string): Stove => documentFrom(env, path).stove

/** The same with what its maker wrote. */
export const documentFrom = (env: Environment, path: string): StoveDocument => {
  const text = readFile(env, path, 'stove file')
  const document = inFile(path, readStoveDocument(isPlanCode(text) ? inFile(path, readPlanCode(text)) : text))
  inFile(path, fuelOf(document.stove))
  return document
}

/** What was measured on a stove, put into the plan it was built from. */
export const builtFrom = (env: Environment, path: string, plan: StoveDocument): Built => {
  const built = inFile(path, readBuilt(readFile(env, path, 'as-built file'), plan))
  inFile(path, fuelOf(built.stove))
  return built
}

export const shelfFrom = (env: Environment, path: string): Shelf =>
  inFile(path, readShelf(readFile(env, path, '--shelf')))

export const trialFrom = (env: Environment, path: string): Trial =>
  inFile(path, readTrial(readFile(env, path, '--trial')))

/** How the files of a logger are read, as it was kept. */
export const mappingFrom = (env: Environment, path: string): Mapping =>
  inFile(path, readMapping(readFile(env, path, '--mapping')))

/** An option that is a quantity, or null when it was not given. */
export const optionQuantity = (text: string | undefined, option: string, key: QuantityKey): number | null =>
  text === undefined ? null : orThrow(readQuantity(text, option, key))

export const problemOf = (
  code: string,
  field: string,
  value: string,
  allowed: string,
  fix: string,
): Problem => ({ code, field, value, allowed, fix })
