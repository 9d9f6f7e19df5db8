import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Engine } from '#store/engine/engine.ts'
import { introspect } from '#store/engine/introspect.ts'
import { FORMAT } from '#store/migrations/list.ts'
import { TABLE_NAMES } from '#store/tables.ts'

const written = JSON.parse(
  readFileSync(new URL('../../../src/store/schema.json', import.meta.url), 'utf8'),
) as { readonly format: number; readonly tables: object }

export const schemaSuite = (engine: () => Promise<Engine>) =>
  describe('the tables', () => {
    it('are those of src/store/schema.json (`npm run docs` writes it)', async () => {
      const { db, kind, close } = await engine()
      const found = await introspect(db, kind)
      await close()
      expect(found).toEqual(written.tables)
      expect(Object.keys(found)).toEqual(TABLE_NAMES)
      expect(written.format).toBe(FORMAT)
    })
  })
