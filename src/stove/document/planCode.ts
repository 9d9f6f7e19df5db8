import { strFromU8, strToU8, unzlibSync, zlibSync } from 'fflate'
import { bad, good, type Outcome } from '#basis/problem.ts'

/** Marks the text of a code, and which dictionary it was written with. */
const PREFIX = 'TINWRIGHT1:'

/** RFC 9285: three of these letters carry two bytes, and a QR code holds them in its alphanumeric mode. */
const LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'

/** Longest text a QR code of any size holds in alphanumeric mode, ISO/IEC 18004, from memory. */
export const LONGEST_CODE = 4296

/**
 * What stove files have in common, so that it need not be written. Never to be changed: codes on paper were written with it.
 * Another list is another prefix.
 */
const COMMON =
  '"role":"pot stand""role":"riser""role":"grate""role":"lid ring""form":"band","role":"damper""along":"axis""round"' +
  '"slit":{"length":"width":"sunflower":{"hexagonal":{"count":"pitch":"margin":"rings":[{"radius":"from":"bearing":"stagger":' +
  '"half""leftOut":["tertiary""outlet""foot":"round","bit":"foot":"square""window":{"width":" mm","height":" mm"}},' +
  '"countersink":"beads":"trim":{"height":"end":"pull-off""end":"friction","opening":"end":"plain""end":"drawn""end":"open""end":"cut"' +
  '"hand":"anticlockwise""hand":"clockwise""bend":"up""bend":"down","angle":"30 deg""innerRadius":"outerRadius":"kind":"vanes"' +
  '"kind":"bore","duty":"passage","diameter":"thickness":"0.25 mm""form":"disc","role":"concentrator""sideSeam":"180 deg"' +
  '"seamDiameter":"bodyDiameter":"bodyWall":"code":" mm ± 0.3 mm","height":" mm ± 0.5 mm"},"bottom":{"end":"top":{"end":"openings":{' +
  '"kind":"pattern","duty":"primary","face":"bottom","hole":{"bit":" mm"},"layout":{"kind":"row","duty":"secondary","hole":{"bit":"' +
  '"kind":"row","duty":"intake","hole":{"diameter":" in"},"count":12,"height":" mm","from":"top"}}},"form":"can","role":"shell","can":{' +
  '"form":"can","role":"fuel can","can":{{"format":"tinwright/stove@1","name":"about":"fuel":{"kind":"wood-chips","level":"moisture":"12 %"},' +
  '"pot":{"diameter":" mm"},"parts":{"assembly":[{"part":"shell","place":"on ground"},{"part":"fuel can","place":"hangs in","host":"shell"},' +
  '{"part":"concentrator","place":"sits on","host":"fuel can"},"place":"stands in","raised":"place":"slips over","slips into","turned":" deg"}]}'

const DICTIONARY = strToU8(COMMON)

const toLetters = (bytes: Uint8Array): string => {
  let text = ''
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length
    let value = pair ? (bytes[i] as number) * 256 + (bytes[i + 1] as number) : (bytes[i] as number)
    for (let k = 0; k < (pair ? 3 : 2); k++) {
      text += LETTERS[value % 45]
      value = Math.floor(value / 45)
    }
  }
  return text
}

/** Null where a letter, or a group of them, stands for no bytes. */
const fromLetters = (text: string): Uint8Array | null => {
  if (text.length % 3 === 1) return null
  const bytes: number[] = []
  for (let i = 0; i < text.length; i += 3) {
    const digits = [...text.slice(i, i + 3)].map((letter) => LETTERS.indexOf(letter))
    if (digits.includes(-1)) return null
    const value = digits.reduceRight((sum, digit) => sum * 45 + digit, 0)
    if (value > (digits.length === 3 ? 65535 : 255)) return null
    if (digits.length === 3) bytes.push(value >> 8)
    bytes.push(value & 255)
  }
  return Uint8Array.from(bytes)
}

/** The checksum at the end of a zlib stream, RFC 1950. */
const adler32 = (bytes: Uint8Array): number => {
  let [a, b] = [1, 0]
  for (const byte of bytes) {
    a = (a + byte) % 65521
    b = (b + a) % 65521
  }
  return b * 65536 + a
}

/** What was packed; null where it does not agree with its checksum, which the library does not look at. */
const unpacked = (bytes: Uint8Array): string | null => {
  try {
    const plain = unzlibSync(bytes, { dictionary: DICTIONARY })
    const told = new DataView(bytes.buffer, bytes.byteLength - 4).getUint32(0)
    return adler32(plain) === told ? strFromU8(plain) : null
  } catch {
    return null
  }
}

/** Whether a text is meant to be a plan's code. */
export const isPlanCode = (text: string): boolean => text.trimStart().startsWith(PREFIX)

/**
 * A stove file as the text of a QR code: without its white space and `$schema`, compressed, in letters such a code holds best.
 * Null where it is longer than any code. Throws `SyntaxError` for a file that is no JSON.
 */
export const planCode = (file: string): string | null => {
  const { $schema: _, ...stove } = JSON.parse(file) as Record<string, unknown>
  const packed = zlibSync(strToU8(JSON.stringify(stove)), { level: 9, dictionary: DICTIONARY })
  const text = PREFIX + toLetters(packed)
  return text.length <= LONGEST_CODE ? text : null
}

/** The stove file in the text of a plan's code, set as a person would read it; a checksum tells slips of the reader. */
export const readPlanCode = (text: string): Outcome<string> => {
  const code = text.trim()
  const fault = (allowed: string): Outcome<string> =>
    bad({
      code: 'planCode.unreadable',
      field: 'the code of a plan',
      value: code.length > 40 ? `${code.slice(0, 40)}…` : code,
      allowed,
      fix: 'Scan it again, flat and in good light, and copy the whole text; or ask for the stove file.',
    })
  if (!code.startsWith(PREFIX)) return fault(`a text that begins with ${PREFIX}`)
  if (code.length > LONGEST_CODE) return fault(`at most ${LONGEST_CODE} letters`)
  const bytes = fromLetters(code.slice(PREFIX.length))
  if (bytes === null) return fault('figures, capitals and  $ % * + - . / :  only, whole to the end')
  const json = unpacked(bytes)
  return json === null
    ? fault('a code that agrees with its own checksum')
    : good(`${JSON.stringify(JSON.parse(json), null, 2)}\n`)
}
