import { archiveSuite } from './archive.ts'
import { changesSuite } from './changes.ts'
import { demoSuite } from './demo.ts'
import { documentsSuite } from './documents.ts'
import { draftsSuite } from './drafts.ts'
import { filesSuite } from './files.ts'
import { modelSuite } from './model.ts'
import type { Rig } from './rig.ts'
import { trialFilesSuite } from './trialFiles.ts'
import { trialsSuite } from './trials.ts'
import { undoSuite } from './undo.ts'

/** All that a workshop promises, wherever it is kept: run on SQLite and on PostgreSQL. */
export const storageSuite = (rig: Rig): void => {
  documentsSuite(rig)
  undoSuite(rig)
  draftsSuite(rig)
  trialsSuite(rig)
  archiveSuite(rig)
  filesSuite(rig)
  trialFilesSuite(rig)
  demoSuite(rig)
  changesSuite(rig)
  modelSuite(rig)
}
