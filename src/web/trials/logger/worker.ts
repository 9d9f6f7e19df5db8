import { inspectPart } from '#proof/logger/inspect.ts'
import { looksLikeLogger } from '#proof/logger/looksLikeLogger.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import { previewOf } from '#proof/logger/preview.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import { type Log, readLog } from '#proof/logger/readLog.ts'
import type { LoggerAnswers, LoggerAsk } from './asked.ts'

let last: { readonly text: string; readonly mapping: string; readonly log: Log } | null = null

const logOf = (text: string, mapping: Mapping): Log => {
  const key = JSON.stringify(mapping)
  if (last?.text !== text || last.mapping !== key) last = { text, mapping: key, log: readLog(text, mapping) }
  return last.log
}

const answer = (ask: LoggerAsk): LoggerAnswers[LoggerAsk['kind']] => {
  if (ask.kind === 'looks') return looksLikeLogger(ask.text)
  if (ask.kind === 'propose') return proposeMapping(ask.text, ask.answers)
  const log = logOf(ask.text, ask.mapping)
  if (ask.kind === 'read') return { log, preview: previewOf(ask.text, ask.mapping, log) }
  const part = log.parts[ask.part]
  return part === undefined ? [] : inspectPart(part, ask.boilingPoint)
}

addEventListener('message', ({ data }: MessageEvent<{ readonly id: number; readonly ask: LoggerAsk }>) => {
  const { id, ask } = data
  try {
    postMessage({ id, value: answer(ask) })
  } catch (fault) {
    postMessage({ id, fault: fault instanceof Error ? fault.message : String(fault) })
  }
})
