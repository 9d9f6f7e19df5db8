import type { Mapping } from '#proof/logger/mapping.ts'
import { mappingText, readMapping } from '#proof/logger/mappingFile.ts'
import { newAct, workshop } from '../../workshop/workshop.ts'

const KEY = 'logger.mappings'
/** A household has a few loggers. */
const MOST = 12

/** How files of a logger are read, as somebody of this workshop said it once. */
export interface KeptMapping {
  readonly name: string
  readonly mapping: Mapping
}

/** Those that read; others are left where they are. */
export const mappingsIn = (text: string): readonly KeptMapping[] => {
  try {
    const said: unknown = JSON.parse(text)
    return (Array.isArray(said) ? said : []).flatMap(
      ({ name, mapping }: { readonly name?: unknown; readonly mapping?: unknown }) => {
        const read = typeof mapping === 'string' ? readMapping(mapping) : null
        return typeof name === 'string' && read?.ok === true ? [{ name, mapping: read.value }] : []
      },
    )
  } catch {
    return []
  }
}

export const keptMappings = async (): Promise<readonly KeptMapping[]> => {
  const answer = await workshop.ask('setting', { key: KEY })
  return answer.ok && answer.value !== null ? mappingsIn(answer.value.text) : []
}

/** Keeps one for next time, in place of the one with the same headings. A sentence where it could not be. */
export const keepMapping = async (name: string, mapping: Mapping): Promise<string | null> => {
  const answer = await workshop.ask('setting', { key: KEY })
  if (!answer.ok) return answer.refusal.sentence
  const before = answer.value === null ? [] : mappingsIn(answer.value.text)
  const others = before.filter((one) => !sameHead(one.mapping, mapping))
  const all = [{ name, mapping }, ...others].slice(0, MOST)
  const text = JSON.stringify(
    all.map((one) => ({ name: one.name, mapping: mappingText(one.mapping) })),
    null,
    2,
  )
  const sent = workshop.write('setSetting', {
    act: await newAct(),
    key: KEY,
    base: answer.value?.head ?? null,
    text,
  })
  const said = await sent.answer
  return said.ok ? null : said.refusal.sentence
}

const head = ({ delimiter, width, headings, units }: Mapping): string =>
  JSON.stringify([delimiter, width, headings, units])

const sameHead = (a: Mapping, b: Mapping): boolean => head(a) === head(b)

/** The mapping whose headings stand in the file word for word; none without headings, which fit anything. */
export const fitting = (text: string, mappings: readonly KeptMapping[]): KeptMapping | null => {
  const lines = new Set(
    text
      .slice(0, 20_000)
      .split(/\r\n|\n|\r/)
      .map((line) => line.replaceAll(/["\s]/g, '')),
  )
  return (
    mappings.find(({ mapping: { headings, delimiter } }) => {
      if (headings.every((one) => one === '')) return false
      const by = delimiter === 'tab' || delimiter === 'blanks' ? '' : delimiter
      return lines.has(headings.join(by).replaceAll(/["\s]/g, ''))
    }) ?? null
  )
}
