import { relative } from 'node:path'
import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { inOrder } from './order.ts'

const root = `${import.meta.dirname}/../..`

/** Hands Vitest its files in the gate's order, the same on every machine. */
export class GateSequencer extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const byPath = new Map(files.map((file) => [relative(root, file.moduleId).replaceAll('\\', '/'), file]))
    return inOrder([...byPath.keys()]).map((path) => byPath.get(path) as TestSpecification)
  }
}
