import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { BENCH_SCREENS, picturesOf } from './benchPictures/screens.ts'

// Pictures of every screen of the bench, made in Chromium with the demo: `node scripts/benchPictures.ts [screen …]`.

const folder = join(import.meta.dirname, '..', 'docs', 'pictures', 'bench')
mkdirSync(folder, { recursive: true })
const wanted = process.argv.slice(2)
const screens = BENCH_SCREENS.filter(({ name }) => wanted.length === 0 || wanted.includes(name))
await picturesOf(screens, folder, (line) => console.log(line))
