import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { introspect } from '#store/engine/introspect.ts'
import { sqliteEngine } from '#store/engine/sqliteEngine.ts'
import { FORMAT, MIGRATIONS } from '#store/migrations/list.ts'
import { compact } from './compactLists.ts'

// Writes what SQLite says of the workshop's tables into src/store/schema.json; a test compares it with both
// databases. Part of `npm run docs`.

const folder = mkdtempSync(join(tmpdir(), 'tinwright-schema-'))
const at = '2031-01-01T00:00:00Z'
try {
  const engine = await sqliteEngine(join(folder, 'workshop'), at, {
    migrations: MIGRATIONS,
    beginning: { id: 'schema', at },
    patience: 0,
  })
  const tables = await introspect(engine.db, 'sqlite')
  await engine.close()
  const text = `${compact(JSON.stringify({ format: FORMAT, tables }, null, 2))}\n`
  writeFileSync(join(import.meta.dirname, '..', 'src', 'store', 'schema.json'), text)
} finally {
  rmSync(folder, { recursive: true })
}
