import type { ArtefactFile } from '#compose/artefact/file.ts'

const KINDS: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  html: 'text/html',
  svg: 'image/svg+xml',
  png: 'image/png',
  dxf: 'image/vnd.dxf',
  txt: 'text/plain',
  json: 'application/json',
  stl: 'model/stl',
  '3mf': 'model/3mf',
  zip: 'application/zip',
}

/** Long enough for a browser to have taken the bytes [ms]. */
const KEPT_FOR = 60_000

/** Hands a file to the browser, which puts it where it puts downloads. */
export const download = ({ name, bytes }: ArtefactFile): void => {
  const type = KINDS[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream'
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  setTimeout(() => URL.revokeObjectURL(url), KEPT_FOR)
}
