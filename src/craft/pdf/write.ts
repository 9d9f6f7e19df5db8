import fontkit from '@cantoo/fontkit'
import {
  clip,
  concatTransformationMatrix,
  endPath,
  PDFBool,
  PDFDocument,
  type PDFFont,
  PDFName,
  type PDFOperator,
  type PDFPage,
  PrintScaling,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
} from '@cantoo/pdf-lib'
import { round } from '../coordinate.ts'
import { dayOf } from '../day.ts'
import type { Shape } from '../drawing.ts'
import { type Weight, weightOf } from '../lettering/measure.ts'
import type { Piece, PlacedPicture, Sheet } from '../sheet/sheet.ts'
import { readSvg, type SvgNode } from '../svg/read.ts'
import { type Face, type LetteringFonts, openFace, type Run } from './face.ts'
import { drawSvg, type PictureTools, textsOfSvg } from './svg/drawSvg.ts'
import { pageResources } from './svg/resources.ts'
import { type Typesetter, trace } from './trace.ts'

export interface PdfEnv {
  readonly title: string
  /** Day the document bears, `2031-05-17`; there is no clock in here. */
  readonly date: string
  /** Of the program. */
  readonly version: string
  readonly fonts: LetteringFonts
}

export interface WrittenPdf {
  readonly bytes: Uint8Array
  /** Letters that no font given had, printed as `?`. */
  readonly missingLetters: readonly string[]
}

/** PDF measures in points of 1/72 in; pages are drawn in millimetres under one scale (ISO 32000-1, 8.3.2.3). */
const POINTS_PER_MM = 72 / 25.4

const shapesOf = (sheet: Sheet): readonly Shape[] => [
  ...sheet.furniture,
  ...sheet.pieces.flatMap(({ shapes }) => shapes),
]

/** A page with its pictures read. */
interface ReadSheet {
  readonly sheet: Sheet
  readonly pictures: readonly { readonly placed: PlacedPicture; readonly root: SvgNode }[]
}

const read = (sheet: Sheet): ReadSheet => ({
  sheet,
  pictures: (sheet.pictures ?? []).map((placed) => ({ placed, root: readSvg(placed.svg) })),
})

/** Every text of the document in the given weight. */
const textsIn = (sheets: readonly ReadSheet[], weight: Weight): ReadonlySet<string> =>
  new Set([
    ...sheets
      .flatMap(({ sheet }) => shapesOf(sheet))
      .flatMap((shape) => (shape.kind === 'text' && weightOf(shape.size) === weight ? [shape.text] : [])),
    ...sheets
      .flatMap(({ pictures }) => pictures.flatMap(({ root }) => textsOfSvg(root)))
      .flatMap(([text, bold]) => (bold === (weight === 'semibold') ? [text] : [])),
  ])

const tracePicture = (
  { placed: { at, width }, root }: ReadSheet['pictures'][number],
  tools: PictureTools,
): PDFOperator[] => {
  const [left, top, wide] = (root.attributes.get('viewBox') ?? '').split(' ').map(Number)
  const scale = width / (wide as number)
  return [
    pushGraphicsState(),
    concatTransformationMatrix(
      scale,
      0,
      0,
      -scale,
      at.x - scale * (left as number),
      at.y + scale * (top as number),
    ),
    ...drawSvg(root, tools),
    popGraphicsState(),
  ]
}

const tracePiece = ({ clip: shown, at, shapes }: Piece, setter: Typesetter): PDFOperator[] => [
  pushGraphicsState(),
  rectangle(round(at.x), round(at.y), round(shown.right - shown.left), round(shown.top - shown.bottom)),
  clip(),
  endPath(),
  concatTransformationMatrix(1, 0, 0, 1, round(at.x - shown.left), round(at.y - shown.bottom)),
  ...trace(shapes, setter),
  popGraphicsState(),
]

const pageTypesetter = (page: PDFPage, faces: Readonly<Record<Weight, Face>>): Typesetter => {
  const keys = new Map<PDFFont, string>()
  return {
    runs: (text, weight) => faces[weight].runs(text),
    fontKey: ({ font }: Run) => {
      const known = keys.get(font)
      if (known !== undefined) return known
      const key = `F${keys.size}`
      keys.set(font, key)
      page.node.setFontDictionary(PDFName.of(key), font.ref)
      return key
    },
  }
}

/** The document as a reader shows and a printer prints it: no scaling, paper by page size, title in the bar. */
const describe = (doc: PDFDocument, { title, version }: PdfEnv, day: Date): void => {
  doc.setTitle(title, { showInWindowTitleBar: true })
  doc.setCreator(`Tinwright ${version}`)
  doc.setProducer(`Tinwright ${version}`)
  doc.setCreationDate(day)
  doc.setModificationDate(day)
  doc.setLanguage('en')
  const preferences = doc.catalog.getOrCreateViewerPreferences()
  preferences.setPrintScaling(PrintScaling.None)
  preferences.setPickTrayByPDFSize(true)
  preferences.dict.set(PDFName.of('DisplayDocTitle'), PDFBool.True)
}

/**
 * Writes sheets as a PDF: vectors at true size, the lettering embedded, printing without scaling asked for.
 * The same sheets and environment give the same bytes: fonts are named by count, dates come from outside,
 * coordinates are rounded to 0.1 µm. Throws `BadInput` for a date that is none.
 */
export const writePdf = async (sheets: readonly Sheet[], env: PdfEnv): Promise<WrittenPdf> => {
  const day = dayOf(env.date)
  const doc = await PDFDocument.create({ updateMetadata: false })
  doc.registerFontkit(fontkit)
  describe(doc, env, day)
  const missing = new Set<string>()
  const miss = (letter: string): void => {
    missing.add(letter)
  }
  const { regular, semibold } = env.fonts
  const pages = sheets.map(read)
  const faces = {
    regular: await openFace(doc, regular, 0, textsIn(pages, 'regular'), miss),
    semibold: await openFace(doc, semibold, regular.length, textsIn(pages, 'semibold'), miss),
  }
  for (const { sheet, pictures } of pages) {
    const page = doc.addPage([sheet.size.width * POINTS_PER_MM, sheet.size.height * POINTS_PER_MM])
    const setter = pageTypesetter(page, faces)
    const tools = { ...setter, ...pageResources(doc, page) }
    page.pushOperators(
      pushGraphicsState(),
      concatTransformationMatrix(POINTS_PER_MM, 0, 0, POINTS_PER_MM, 0, 0),
      ...pictures.flatMap((picture) => tracePicture(picture, tools)),
      ...sheet.pieces.flatMap((piece) => tracePiece(piece, setter)),
      ...trace(sheet.furniture, setter),
      popGraphicsState(),
    )
  }
  const bytes = await doc.save({ addDefaultPage: false, updateFieldAppearances: false })
  return { bytes, missingLetters: [...missing] }
}
