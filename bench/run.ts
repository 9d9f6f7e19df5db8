import { readdirSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { barText, meets, type Row, type Rows } from './row.ts'

// `npm run bench`: a table. `npm run bench -- --json`: one object a line. A word picks the files whose
// names hold it: `npm run bench -- text`.

const { values, positionals } = parseArgs({
  options: { json: { type: 'boolean', default: false } },
  allowPositionals: true,
})

const files = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith('.bench.ts'))
  .filter((name) => positionals.length === 0 || positionals.some((word) => name.includes(word)))
  .sort()

const numberText = (value: number): string => {
  const digits = Math.abs(value) >= 100 ? 0 : 3
  return value.toLocaleString('en', { maximumFractionDigits: digits })
}

const verdict = ({ value, bar }: Row): string => {
  if (bar === null) return ''
  return meets(value, bar) ? `meets ${barText(bar)}` : `MISSES ${barText(bar)}`
}

const printTable = (rows: readonly Row[]): void => {
  const width = (text: (row: Row) => string): number => Math.max(...rows.map((row) => text(row).length))
  const wideName = width((row) => row.name)
  const wideValue = width((row) => numberText(row.value))
  const wideUnit = width((row) => row.unit)
  for (const row of rows) {
    const cells = [
      row.name.padEnd(wideName),
      numberText(row.value).padStart(wideValue),
      row.unit.padEnd(wideUnit),
      verdict(row),
    ]
    console.log(cells.join('  ').trimEnd())
  }
}

const printJson = ({ name, value, unit, bar }: Row): void =>
  console.log(JSON.stringify({ name, value, unit, bar: bar === null ? null : barText(bar) }))

if (files.length === 0) {
  console.error(`No measurement is called ${positionals.join(' or ')}; there are bench/*.bench.ts.`)
  process.exitCode = 2
}

const measure = async (file: string): Promise<readonly Row[]> => {
  if (!values.json) console.error(`measuring ${file}`)
  try {
    const { rows } = (await import(`./${file}`)) as { readonly rows: Rows }
    return await rows()
  } catch (error) {
    // One measurement that breaks does not take the others with it.
    console.error(`${file} broke:`, error)
    process.exitCode = 3
    return []
  }
}

const all: Row[] = []
for (const file of files) {
  const measured = await measure(file)
  // One by one, so that a program that reads along sees them when they are there.
  if (values.json) measured.forEach(printJson)
  all.push(...measured)
}
if (!values.json && all.length > 0) printTable(all)
