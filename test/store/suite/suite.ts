import { archiveSuite } from './archive.ts'
import { changesSuite } from './changes.ts'
import { documentsSuite } from './documents.ts'
import { draftsSuite } from './drafts.ts'
import { modelSuite } from './model.ts'
import type { Rig } from './rig.ts'
import { trialsSuite } from './trials.ts'
import { undoSuite } from './undo.ts'

/** All that a workshop promises, wherever it is kept: run on SQLite and on PostgreSQL. */
export const storageSuite = (rig: Rig): void => {
  documentsSuite(rig)
  undoSuite(rig)
  draftsSuite(rig)
  trialsSuite(rig)
  archiveSuite(rig)
  changesSuite(rig)
  modelSuite(rig)
}
