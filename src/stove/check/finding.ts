import type { Finding } from '#stove/model.ts'

type Say = (
  code: string,
  where: { readonly part: string; readonly opening?: string | null },
  sentence: string,
  fix: string,
) => Finding

const say =
  (severity: Finding['severity']): Say =>
  (code, { part, opening = null }, sentence, fix) => ({ severity, code, part, opening, sentence, fix })

/** Will not work, or is dangerous. */
export const stop = say('stop')
/** Will disappoint, or is hard to make. */
export const warn = say('warn')
/** Worth knowing. */
export const note = say('note')

export const SAY = { stop, warn, note } as const

const SEVERITIES: readonly Finding['severity'][] = ['stop', 'warn', 'note']

const byText = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0)

/** Worst first, then by part, the whole part before its openings, then by code: the same on every machine. */
export const inOrder = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort(
    (one, other) =>
      SEVERITIES.indexOf(one.severity) - SEVERITIES.indexOf(other.severity) ||
      byText(one.part, other.part) ||
      byText(one.opening ?? '', other.opening ?? '') ||
      byText(one.code, other.code) ||
      byText(one.sentence, other.sentence),
  )
