import type { Migration } from './migration.ts'

/** Times are ISO texts, yes and no are 1 and 0: the same on both databases. */
export const firstTables: Migration['up'] = async (db, kind) => {
  const bytes = kind === 'sqlite' ? 'blob' : 'bytea'
  const schema = db.schema
  await schema
    .createTable('workshop')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('format', 'integer', (c) => c.notNull())
    .addColumn('created', 'text', (c) => c.notNull())
    .addColumn('demo', 'text')
    .addColumn('sequence', 'integer', (c) => c.notNull())
    .execute()
  await schema
    .createTable('documents')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('head', 'text', (c) => c.notNull())
    .addColumn('deleted', 'integer', (c) => c.notNull())
    .addColumn('version', 'integer', (c) => c.notNull())
    .addColumn('about_document', 'text', (c) => c.references('documents.id'))
    .addColumn('about_revision', 'text')
    .addColumn('created', 'text', (c) => c.notNull())
    .addColumn('touched', 'integer', (c) => c.notNull())
    .addColumn('place', 'integer', (c) => c.notNull().unique())
    .execute()
  await schema
    .createTable('revisions')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('document', 'text', (c) => c.notNull().references('documents.id'))
    .addColumn('text', 'text', (c) => c.notNull())
    .addColumn('note', 'text', (c) => c.notNull())
    .addColumn('hash', 'text', (c) => c.notNull())
    .addColumn('created', 'text', (c) => c.notNull())
    .addColumn('place', 'integer', (c) => c.notNull().unique())
    .execute()
  await schema
    .createTable('parents')
    .addColumn('revision', 'text', (c) => c.notNull().references('revisions.id'))
    .addColumn('parent', 'text', (c) => c.notNull().references('revisions.id'))
    .addColumn('place', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('parents_key', ['revision', 'parent'])
    .execute()
  await schema
    .createTable('steps')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('sequence', 'integer', (c) => c.notNull().unique())
    .addColumn('client', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('label', 'text', (c) => c.notNull())
    .addColumn('fingerprint', 'text', (c) => c.notNull())
    .addColumn('of', 'text', (c) => c.references('steps.id'))
    .addColumn('undone_by', 'text', (c) => c.references('steps.id'))
    .addColumn('created', 'text', (c) => c.notNull())
    .execute()
  await schema
    .createTable('changes')
    .addColumn('step', 'text', (c) => c.notNull().references('steps.id'))
    .addColumn('place', 'integer', (c) => c.notNull())
    .addColumn('document', 'text', (c) => c.notNull().references('documents.id'))
    .addColumn('name_before', 'text', (c) => c.notNull())
    .addColumn('name_after', 'text', (c) => c.notNull())
    .addColumn('head_before', 'text', (c) => c.notNull())
    .addColumn('head_after', 'text', (c) => c.notNull())
    .addColumn('deleted_before', 'integer', (c) => c.notNull())
    .addColumn('deleted_after', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('changes_key', ['step', 'place'])
    .execute()
  await schema
    .createTable('drafts')
    .addColumn('document', 'text', (c) => c.notNull())
    .addColumn('client', 'text', (c) => c.notNull())
    .addColumn('base', 'text', (c) => c.references('revisions.id'))
    .addColumn('number', 'integer', (c) => c.notNull())
    .addColumn('position', 'integer', (c) => c.notNull())
    .addColumn('closed', 'integer', (c) => c.notNull())
    .addColumn('updated', 'text', (c) => c.notNull())
    .addColumn('touched', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('drafts_key', ['document', 'client'])
    .execute()
  await schema
    .createTable('draft_entries')
    .addColumn('document', 'text', (c) => c.notNull())
    .addColumn('client', 'text', (c) => c.notNull())
    .addColumn('place', 'integer', (c) => c.notNull())
    .addColumn('text', 'text', (c) => c.notNull())
    .addColumn('label', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('draft_entries_key', ['document', 'client', 'place'])
    .addForeignKeyConstraint('draft_entries_draft', ['document', 'client'], 'drafts', ['document', 'client'])
    .execute()
  await schema
    .createTable('events')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('trial', 'text', (c) => c.notNull().references('documents.id'))
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('body', 'text', (c) => c.notNull())
    // No foreign key: the other phone may bring the replaced one later.
    .addColumn('replaces', 'text')
    .addColumn('withdrawn', 'integer', (c) => c.notNull())
    .addColumn('client', 'text', (c) => c.notNull())
    .addColumn('created', 'text', (c) => c.notNull())
    .addColumn('sequence', 'integer', (c) => c.notNull())
    .execute()
  await schema
    .createTable('blobs')
    .addColumn('hash', 'text', (c) => c.primaryKey().notNull())
    .addColumn('size', 'integer', (c) => c.notNull())
    .addColumn('bytes', bytes, (c) => c.notNull())
    .execute()

  const indexes = [
    ['documents_kind', 'documents', ['kind']],
    ['documents_touched', 'documents', ['touched']],
    ['revisions_document', 'revisions', ['document', 'place']],
    ['revisions_hash', 'revisions', ['hash']],
    ['parents_parent', 'parents', ['parent']],
    ['steps_client', 'steps', ['client', 'sequence']],
    ['changes_document', 'changes', ['document']],
    ['drafts_touched', 'drafts', ['touched']],
    ['events_trial', 'events', ['trial', 'sequence']],
  ] as const
  for (const [name, table, columns] of indexes) {
    await schema
      .createIndex(name)
      .on(table)
      .columns([...columns])
      .execute()
  }
}
