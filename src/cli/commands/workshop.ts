import { basename, dirname } from 'node:path'
import { BadInput } from '#basis/problem.ts'
import { columns, page, wrap } from '#compose/page/text.ts'
import type { Answer } from '#store/answer.ts'
import type { DocumentHead, Workshop } from '#store/workshop.ts'
import type { ArchiveReport, ImportReport } from '#wire/files.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, readFileBytes } from '../input.ts'
import { writeInto } from '../output.ts'
import { pieceOf } from './workshopPiece.ts'

export interface WorkshopOptions {
  readonly workshop?: string
  /** One thing that is to leave, instead of all. */
  readonly only?: string
  readonly json?: boolean
}

const TASKS = 'list, export FILE or import FILE'

const taken = <T>(answer: Answer<T>, value: string, allowed: string): T => {
  if (answer.ok) return answer.value
  const { code, sentence } = answer.refusal
  const word = code.replaceAll(' ', '-')
  throw new BadInput([problemOf(`workshop.${word}`, 'workshop', value, allowed, sentence)])
}

/** Opens the workshop for as long as the work takes. */
const inWorkshop = async <T>(
  env: Environment,
  { workshop: named }: WorkshopOptions,
  begin: boolean,
  work: (shop: Workshop) => Promise<T>,
): Promise<T> => {
  const shop = taken(
    await env.workshop(begin, named),
    named ?? 'what is kept there',
    'a whole workshop that can be written to',
  )
  try {
    return await work(shop)
  } finally {
    await shop.close()
  }
}

const things = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`

const list = (env: Environment, options: WorkshopOptions): Promise<void> =>
  inWorkshop(env, options, false, async (shop) => {
    const about = taken(await shop.about(), 'list', TASKS)
    const documents = taken(await shop.list(), 'list', TASKS)
    if (options.json === true) {
      env.out(`${JSON.stringify({ workshop: about, documents }, null, 2)}\n`)
      return
    }
    const shown = documents.filter(({ kind }) => kind !== 'setting' && kind !== 'photo')
    const row = ({ kind, name, created }: DocumentHead): readonly string[] => [
      kind,
      created.slice(0, 10),
      name,
    ]
    env.out(
      page(
        wrap(`${about.place}: ${things(shown.length, 'thing')}`, env.width),
        columns(shown.map(row), ['left', 'left', 'left'], env.width),
      ),
    )
  })

/** One stove, trial or the shelf into a plain file. */
const exportPiece = (env: Environment, file: string, only: string, options: WorkshopOptions): Promise<void> =>
  inWorkshop(env, options, false, async (shop) => {
    const { text } = await pieceOf(shop, only, (answer) => taken(answer, only, 'what goes out as a file'))
    const bytes = new TextEncoder().encode(text)
    const path = writeInto(env, dirname(file), basename(file), bytes, 'file')
    env.out(
      options.json === true ? `${JSON.stringify({ path, size: bytes.length }, null, 2)}\n` : `${path}\n`,
    )
  })

const exportTo = (env: Environment, file: string, options: WorkshopOptions): Promise<void> =>
  inWorkshop(env, options, false, async (shop) => {
    const archive = taken(await shop.exportArchive(env.now()), 'export', TASKS)
    const path = writeInto(env, dirname(file), basename(file), archive.bytes, 'file')
    const { bytes, ...counts } = archive
    if (options.json === true) {
      env.out(`${JSON.stringify({ path, size: bytes.length, ...counts }, null, 2)}\n`)
      return
    }
    const { documents, revisions, photos, unsaved } = counts
    env.out(
      page(
        wrap(
          `${path}: ${things(documents, 'thing')} in ${things(revisions, 'revision')}, ${things(photos, 'photo')}`,
          env.width,
        ),
        unsaved === 0
          ? null
          : wrap(
              `${things(unsaved, 'edit')} in progress ${unsaved === 1 ? 'is' : 'are'} not in it: save on the bench first.`,
              env.width,
            ),
      ),
    )
  })

const archiveLines = ({ added, renewed, kept, apart, strange, ...counts }: ArchiveReport, width: number) => [
  wrap(
    `${added} new, ${renewed} brought up to date, ${kept} here already; ${things(counts.revisions, 'new revision')}, ${things(counts.events, 'event')}, ${things(counts.photos, 'photo')}`,
    width,
  ),
  apart.length === 0
    ? null
    : wrap(`Went two ways, both kept, the one here counts: ${apart.join(', ')}.`, width),
  strange.length === 0
    ? null
    : wrap(`Left out, as nothing in the archive names it: ${strange.join(', ')}.`, width),
]

const fileLine = ({ added, renewed, known }: ImportReport): string =>
  `${added.length} new, ${renewed.length} brought up to date, ${known.length} here already`

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b

const importFrom = async (env: Environment, file: string, options: WorkshopOptions): Promise<void> => {
  const bytes = readFileBytes(env, file, 'file')
  const allowed = "a workshop's archive, a stove file, a shelf file or a trial file"
  const { json } = options
  const act = { id: env.newId(), client: 'command-line', at: env.now() }
  await inWorkshop(env, options, true, async (shop) => {
    if (isZip(bytes)) {
      const report = taken(await shop.importArchive(act, bytes), file, allowed)
      env.out(json ? `${JSON.stringify(report, null, 2)}\n` : page(...archiveLines(report, env.width)))
      return
    }
    const named = { name: basename(file), text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) }
    const report = taken(await shop.importFile(act, named), file, allowed)
    env.out(
      json
        ? `${JSON.stringify(report, null, 2)}\n`
        : page(wrap(fileLine(report), env.width), ...report.remarks.map((remark) => wrap(remark, env.width))),
    )
  })
}

/** What lies in the workshop; all of it into one archive, or one thing into a file; an archive or a file into it. */
export const workshop = async (
  env: Environment,
  task: string,
  file: string | undefined,
  options: WorkshopOptions,
): Promise<ExitCode> => {
  if (options.only !== undefined && task !== 'export')
    throw new BadInput([
      problemOf('workshop.only', '--only', options.only, 'only with export', 'Leave it out, or export.'),
    ])
  if (task === 'list' && file === undefined) await list(env, options)
  else if (task === 'export' && file !== undefined)
    await (options.only === undefined
      ? exportTo(env, file, options)
      : exportPiece(env, file, options.only, options))
  else if (task === 'import' && file !== undefined) await importFrom(env, file, options)
  else
    throw new BadInput([
      problemOf(
        'workshop.task',
        'workshop',
        file === undefined ? task : `${task} ${file}`,
        TASKS,
        'Name what to do, and the file where one is needed.',
      ),
    ])
  return EXIT.fine
}
