import { type Zippable, zipSync } from 'fflate'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import { page, wrap } from '../page/text.ts'
import { ARTEFACTS, type Artefact, type Making } from './artefacts.ts'
import { type ArtefactFile, textFile } from './file.ts'
import type { MakingTools, MakingWish } from './wish.ts'

const FOLDER: Readonly<Record<Artefact, string>> = {
  'plan pages': '',
  'plan screen': '',
  templates: 'templates/',
  'drawings svg': 'templates/svg/',
  'drawings dxf': 'templates/dxf/',
  'shop list': '',
  steps: 'steps/',
  solids: 'solids/',
  guides: 'drill-guides/',
  sheets: 'sheets/',
  cards: 'cards/',
  'stove file': '',
}

/** A PNG or 3MF is packed already. */
const isPacked = (name: string): boolean => /\.(?:png|3mf|pdf)$/.test(name)

const WIDE = 78

/** The words that lie on top. */
const readMe = ({ document: { stove }, date, author, licence }: MakingWish): string =>
  page(
    wrap(`${stove.name}: a plan of ${date}`, WIDE),
    wrap(
      [
        author === null ? null : `By ${author}.`,
        licence === null ? 'No terms were named: ask before you publish it again.' : `Terms: ${licence}.`,
      ]
        .filter((part) => part !== null)
        .join(' '),
      WIDE,
    ),
    wrap(
      'Print the templates at 100 % (no “fit to page”), then measure both bars on a page: each is 100 mm long, the line beside it 4 in.',
      WIDE,
    ),
    ['Before you cut or burn', ...MAKING_CAUTIONS.map((line) => wrap(line, WIDE, '  '))].join('\n'),
  )

const zipped = (files: readonly ArtefactFile[], date: string): Uint8Array => {
  const tree: Zippable = {}
  // A zip knows no time zone: the day that the pages bear, at noon.
  const mtime = `${date}T12:00:00`
  for (const { name, bytes } of files) tree[name] = [bytes, { level: isPacked(name) ? 0 : 6, mtime }]
  return zipSync(tree)
}

/** Files of one artefact as one download: the file itself where there is one, else a zip of them. */
export const asOne = (files: readonly ArtefactFile[], stem: string, date: string): ArtefactFile | null => {
  const [only] = files
  if (only === undefined) return null
  return files.length === 1 ? only : { name: `${stem}.zip`, bytes: zipped(files, date) }
}

/** All that can be made of a stove in one archive, with the cautions on top. */
export const everything = async (
  wish: MakingWish,
  making: Making,
  { tell }: Pick<MakingTools, 'tell'>,
): Promise<ArtefactFile> => {
  const files: ArtefactFile[] = [textFile('READ-ME.txt', readMe(wish))]
  for (const artefact of ARTEFACTS) {
    tell(artefact, null)
    for (const { name, bytes } of await making.make(artefact))
      files.push({ name: `${FOLDER[artefact]}${name}`, bytes })
  }
  tell('Packing', null)
  const { name } = wish.document.stove
  return { name: `${fileNameOf(name)}-everything.zip`, bytes: zipped(files, wish.date) }
}
