import { type PDFDict, type PDFDocument, PDFName, type PDFPage } from '@cantoo/pdf-lib'
import type { LinearGradient, PictureTools } from './drawSvg.ts'

type Shared = Pick<PictureTools, 'opacityKey' | 'shadingKey'>

const dictionaryIn = (doc: PDFDocument, page: PDFPage, kind: 'ExtGState' | 'Shading'): PDFDict => {
  const { Resources } = page.node.normalizedEntries()
  const known = Resources.get(PDFName.of(kind))
  if (known !== undefined) return known as PDFDict
  const fresh = doc.context.obj({})
  Resources.set(PDFName.of(kind), fresh)
  return fresh
}

/** Between two colours, exponent 1: a straight mix (ISO 32000-1, 7.10.3). */
const mix = (doc: PDFDocument, from: readonly number[], to: readonly number[]) =>
  doc.context.obj({ FunctionType: 2, Domain: [0, 1], C0: [...from], C1: [...to], N: 1 })

/** The mixes of a gradient one after the other (ISO 32000-1, 7.10.4). */
const ramp = (doc: PDFDocument, { stops }: LinearGradient) => {
  const [first, ...more] = stops
  if (first === undefined) throw new SyntaxError('A gradient has at least one stop')
  const rgb = stops.map(([, { rgb }]) => rgb)
  if (more.length === 0) return mix(doc, first[1].rgb, first[1].rgb)
  return doc.context.obj({
    FunctionType: 3,
    Domain: [0, 1],
    Functions: more.map((_, i) => mix(doc, rgb[i] as readonly number[], rgb[i + 1] as readonly number[])),
    Bounds: stops.slice(1, -1).map(([offset]) => offset),
    Encode: more.flatMap(() => [0, 1]),
  })
}

/** Graphics states and shadings of one page, named by count so that the same page has the same names. */
export const pageResources = (doc: PDFDocument, page: PDFPage): Shared => {
  const states = new Map<string, string>()
  let shadings = 0
  return {
    opacityKey: (filled, stroked) => {
      const [ca, CA] = [filled, stroked].map((value) => Math.round(value * 1000) / 1000) as [number, number]
      const id = `${ca} ${CA}`
      const known = states.get(id)
      if (known !== undefined) return known
      const key = `O${states.size}`
      states.set(id, key)
      const state = doc.context.obj({ Type: 'ExtGState', ca, CA })
      dictionaryIn(doc, page, 'ExtGState').set(PDFName.of(key), doc.context.register(state))
      return key
    },
    shadingKey: (gradient) => {
      const key = `S${shadings++}`
      const shading = doc.context.obj({
        ShadingType: 2,
        ColorSpace: 'DeviceRGB',
        Coords: [...gradient.from, ...gradient.to],
        Function: ramp(doc, gradient),
        Extend: [true, true],
      })
      dictionaryIn(doc, page, 'Shading').set(PDFName.of(key), doc.context.register(shading))
      return key
    },
  }
}
