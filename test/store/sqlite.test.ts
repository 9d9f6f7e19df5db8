import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe } from 'vitest'
import { sqliteEngine } from '#store/engine/sqliteEngine.ts'
import { MIGRATIONS } from '#store/migrations/list.ts'
import { AT } from './acts.ts'
import { rigOn } from './suite/rig.ts'
import { schemaSuite } from './suite/schema.ts'
import { storageSuite } from './suite/suite.ts'

let folder: string
let count = 0
const next = (): string => join(folder, `${++count}.tinwright`)

describe('the workshop in a file', () => {
  storageSuite(
    rigOn({
      runs: 40,
      start: async () => {
        folder = mkdtempSync(join(tmpdir(), 'tinwright-store-'))
      },
      next: async () => ({ file: next() }),
      stop: async () => rmSync(folder, { recursive: true }),
    }),
  )
  schemaSuite(() =>
    sqliteEngine(next(), AT, { migrations: MIGRATIONS, beginning: { id: 'one', at: AT }, patience: 0 }),
  )
})
