import { strToU8, zipSync } from 'fflate'
import type { Mesh } from '../solid/mesh.ts'

/** What a 3MF file says of itself; the names are those the core specification knows. */
export interface ThreeMfMetadata {
  readonly title: string
  readonly description: string
  readonly application: string
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Signs that XML 1.0 does not know even escaped. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that must go
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '').replace(/[&<>"]/g, (sign) => ESCAPES[sign] as string)

const CONTENT_TYPES =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">' +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>' +
  '</Types>\n'

const RELATIONSHIPS =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
  '<Relationship Target="/3D/3dmodel.model" Id="rel0" ' +
  'Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>' +
  '</Relationships>\n'

/** A hundred-thousandth of a millimetre: about what a 32-bit number of this size can tell apart. */
const DIGITS = 5

const number = (value: number): string => String(Number(value.toFixed(DIGITS)))

const objectXml = ({ name, positions, triangles }: Mesh, id: number): string => {
  const lines = [`<object id="${id}" type="model" name="${escaped(name)}"><mesh><vertices>`]
  for (let at = 0; at < positions.length; at += 3) {
    const [x, y, z] = [0, 1, 2].map((axis) => number(positions[at + axis] as number))
    lines.push(`<vertex x="${x}" y="${y}" z="${z}"/>`)
  }
  lines.push('</vertices><triangles>')
  for (let at = 0; at < triangles.length; at += 3)
    lines.push(`<triangle v1="${triangles[at]}" v2="${triangles[at + 1]}" v3="${triangles[at + 2]}"/>`)
  lines.push('</triangles></mesh></object>')
  return lines.join('\n')
}

const modelXml = (meshes: readonly Mesh[], { title, description, application }: ThreeMfMetadata): string =>
  [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">',
    `<metadata name="Title">${escaped(title)}</metadata>`,
    `<metadata name="Description">${escaped(description)}</metadata>`,
    `<metadata name="Application">${escaped(application)}</metadata>`,
    '<resources>',
    ...meshes.map((mesh, index) => objectXml(mesh, index + 1)),
    '</resources>',
    '<build>',
    ...meshes.map((_, index) => `<item objectid="${index + 1}"/>`),
    '</build>',
    '</model>',
    '',
  ].join('\n')

/** The earliest a zip archive can say, in whatever zone the machine keeps: the same bytes on every day. */
const NO_DATE = [1980, 0, 1] as const

/**
 * Meshes as a 3MF file, each an object with its name, in millimetres [mm]: an archive of three files as the core
 * specification of 3MF (1.3) wants them. The same meshes and metadata give the same bytes.
 */
export const writeThreeMf = (meshes: readonly Mesh[], metadata: ThreeMfMetadata): Uint8Array =>
  zipSync(
    {
      '[Content_Types].xml': strToU8(CONTENT_TYPES),
      '_rels/.rels': strToU8(RELATIONSHIPS),
      '3D/3dmodel.model': strToU8(modelXml(meshes, metadata)),
    },
    { mtime: new Date(...NO_DATE), level: 6, os: 0 },
  )
