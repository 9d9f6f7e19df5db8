import { openBench } from '#server/openBench.ts'
import { openWorkshop } from '#store/open.ts'

// A server and its workshop without all that a maker's program does before and after, so that it can be killed often:
// `node serving.ts FILE PORT`. Says where it is, as the program does.

const [file = '', port = '0'] = process.argv.slice(2)
const now = (): string => new Date().toISOString()
const opened = await openWorkshop({ file }, { at: now(), beginAs: 'workshop-1' })
if (!opened.ok) throw new Error(opened.refusal.sentence)
const bench = await openBench({
  workshop: opened.value,
  assets: new Map(),
  deviceFile: { read: () => null, write: () => undefined },
  port: Number(port),
  house: null,
  version: '0.1.0',
  write: (line) => process.stderr.write(`${line}\n`),
  clock: () => performance.now(),
  now,
})
if (!bench.ok) throw new Error(bench.refusal.sentence)
process.stdout.write(`${JSON.stringify({ address: bench.value.address, port: bench.value.port })}\n`)
process.once('SIGTERM', async () => {
  await bench.value.close()
  await opened.value.close()
})
