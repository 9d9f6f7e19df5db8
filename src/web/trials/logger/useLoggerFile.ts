import { useCallback, useEffect, useState } from 'react'
import { problemSentence } from '#basis/problem.ts'
import type { Answers, Mapping, Question } from '#proof/logger/mapping.ts'
import type { Preview } from '#proof/logger/preview.ts'
import type { Log } from '#proof/logger/readLog.ts'
import { askLogger } from './askLogger.ts'
import { dropFile, type KeptFile, keepFile, keptFile } from './keptFiles.ts'
import { fitting, keepMapping, keptMappings } from './keptMappings.ts'

export type Reading =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'looking' }
  | { readonly kind: 'refused'; readonly sentence: string }
  | { readonly kind: 'asking'; readonly questions: readonly Question[] }
  | {
      readonly kind: 'read'
      readonly mapping: Mapping
      readonly log: Log
      readonly preview: Preview
      /** The kept mapping it was read by; null: looked at anew. */
      readonly by: string | null
    }

export interface LoggerFile {
  readonly file: KeptFile | null
  readonly reading: Reading
  /** What became of keeping: a sentence, or null. */
  readonly said: string | null
  readonly take: (name: string, text: string) => void
  readonly answer: (answers: Answers) => void
  /** Forgets the mapping and looks at the file as if for the first time. */
  readonly lookAnew: () => void
  readonly change: (change: Partial<KeptFile>) => void
  readonly keepForNextTime: (name: string) => void
  readonly drop: () => void
}

const sentenceOf = (fault: unknown): string =>
  `The file could not be looked at: ${fault instanceof Error ? fault.message : String(fault)}.`

/** A logger's file beside a trial, from the drop to the readings. */
export const useLoggerFile = (trial: string): LoggerFile => {
  const [file, setFile] = useState<KeptFile | null>(null)
  const [reading, setReading] = useState<Reading>({ kind: 'nothing' })
  const [answers, setAnswers] = useState<Answers>({})
  const [said, setSaid] = useState<string | null>(null)

  const readBy = useCallback(async (text: string, mapping: Mapping, by: string | null): Promise<void> => {
    const { log, preview } = await askLogger({ kind: 'read', text, mapping })
    setReading({ kind: 'read', mapping, log, preview, by })
  }, [])

  const keep = useCallback((next: KeptFile): void => {
    setFile(next)
    void keepFile(next).then((kept) => {
      if (!kept) setSaid('This browser has no room to keep the file: it is gone when the page is.')
    })
  }, [])

  const propose = useCallback(
    async (next: KeptFile, given: Answers): Promise<void> => {
      try {
        const proposal = await askLogger({ kind: 'propose', text: next.text, answers: given })
        if (!proposal.ok)
          setReading({ kind: 'refused', sentence: proposal.problems.map(problemSentence).join(' ') })
        else if (proposal.value.kind === 'questions')
          setReading({ kind: 'asking', questions: proposal.value.questions })
        else {
          const { mapping } = proposal.value
          keep({ ...next, mapping })
          await readBy(next.text, mapping, null)
        }
      } catch (fault) {
        setReading({ kind: 'refused', sentence: sentenceOf(fault) })
      }
    },
    [keep, readBy],
  )

  /** By a mapping kept from last time where one fits, else looked at anew. */
  const begin = useCallback(
    async (next: KeptFile): Promise<void> => {
      const known = fitting(next.text, await keptMappings())
      if (known === null) {
        keep(next)
        await propose(next, {})
        return
      }
      keep({ ...next, mapping: known.mapping })
      await readBy(next.text, known.mapping, known.name)
    },
    [keep, propose, readBy],
  )

  useEffect(() => {
    let gone = false
    void keptFile(trial).then(async (kept) => {
      if (gone || kept === null) return
      setFile(kept)
      setReading({ kind: 'looking' })
      if (kept.mapping === null) await begin(kept)
      else await readBy(kept.text, kept.mapping, null)
    })
    return () => {
      gone = true
    }
  }, [trial, begin, readBy])

  const take = async (name: string, text: string): Promise<void> => {
    setSaid(null)
    setAnswers({})
    setReading({ kind: 'looking' })
    const next: KeptFile = { trial, name, text, mapping: null, part: 0, matches: [], offset: 0 }
    await begin(next)
  }
  return {
    file,
    reading,
    said,
    take: (name, text) => void take(name, text),
    answer: (given) => {
      if (file === null) return
      const all = { ...answers, ...given }
      setAnswers(all)
      setReading({ kind: 'looking' })
      void propose(file, all)
    },
    lookAnew: () => {
      if (file === null) return
      setAnswers({})
      setReading({ kind: 'looking' })
      void propose({ ...file, mapping: null }, {})
    },
    change: (change) => {
      if (file !== null) keep({ ...file, ...change })
    },
    keepForNextTime: (name) => {
      if (reading.kind === 'read')
        void keepMapping(name, reading.mapping).then((fault) =>
          setSaid(fault ?? 'Kept: the next file with these headings is read the same way.'),
        )
    },
    drop: () => {
      setFile(null)
      setReading({ kind: 'nothing' })
      void dropFile(trial)
    },
  }
}
