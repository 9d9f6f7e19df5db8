import { BadInput } from '#basis/problem.ts'
import type { Environment } from './environment.ts'
import { problemOf } from './input.ts'

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'The folder cannot be made there. Name another.',
  ENOTDIR: 'A file stands where the folder should be. Name another folder.',
  EEXIST: 'A file stands where the folder should be. Name another folder.',
  EISDIR: 'A folder stands where the file should be. Name another folder.',
  EACCES: 'Nothing may be written there. Name another folder, or look at its permissions.',
  EPERM: 'Nothing may be written there. Name another folder, or look at its permissions.',
  EROFS: 'Nothing can be written there. Name another folder.',
  ENOSPC: 'There is no room left there. Make room, or name another folder.',
}

/** Writes one file whole or not at all, or says why that folder will not do. Returns the path written. */
export const writeInto = (
  env: Environment,
  folder: string,
  name: string,
  bytes: Uint8Array,
  option = '--out',
): string => {
  try {
    return env.write(folder, name, bytes)
  } catch (error) {
    const code = (error as { readonly code?: string }).code ?? ''
    throw new BadInput([
      problemOf(
        'folder.unwritable',
        option,
        folder,
        `a folder that ${name} can be written into`,
        reasons[code] ?? `It could not be written (${code || String(error)}).`,
      ),
    ])
  }
}
