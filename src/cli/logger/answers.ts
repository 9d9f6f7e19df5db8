import { BadInput, type Outcome, orThrow } from '#basis/problem.ts'
import type { Mapping, Question } from '#proof/logger/mapping.ts'
import { type Proposal, proposeMapping } from '#proof/logger/propose.ts'
import { problemOf } from '../input.ts'

/** What came of the file and the maker's answers: how it is read, or what is still open. */
export interface Proposed {
  readonly mapping: Mapping | null
  readonly questions: readonly Question[]
}

const parsed = (written: readonly string[]): ReadonlyMap<string, string> => {
  const answers = new Map<string, string>()
  for (const one of written) {
    const at = one.indexOf('=')
    const [key, choice] = [one.slice(0, at).trim(), one.slice(at + 1).trim()]
    if (at < 1 || choice === '')
      throw new BadInput([
        problemOf(
          'logger.answer-form',
          '--answer',
          one,
          'what was asked, =, and the choice: "decimal=decimals"',
          'Leave the answers out to see what is asked.',
        ),
      ])
    if (answers.has(key) && answers.get(key) !== choice)
      throw new BadInput([
        problemOf(
          'logger.answer-twice',
          '--answer',
          `${key}=${answers.get(key)} and ${key}=${choice}`,
          'one answer to each question',
          'Leave one of the two out.',
        ),
      ])
    answers.set(key, choice)
  }
  return answers
}

const checked = ({ key, choices }: Question, choice: string): string => {
  if (choices.includes(choice)) return choice
  throw new BadInput([
    problemOf(
      'logger.answer-choice',
      '--answer',
      `${key}=${choice}`,
      choices.map((one) => `"${key}=${one}"`).join(' or '),
      'Choose one of these.',
    ),
  ])
}

const proposedIn = (file: string, outcome: Outcome<Proposal>): Proposal => {
  if (outcome.ok) return outcome.value
  throw new BadInput(outcome.problems.map((problem) => ({ ...problem, field: file })))
}

/** Asks again until no answer is left to give: one answer may open the next question. */
export const proposedFor = (file: string, text: string, written: readonly string[]): Proposed => {
  const answers = parsed(written)
  const given: Record<string, string> = {}
  const asked = new Set<string>()
  let proposal = proposedIn(file, proposeMapping(text, given))
  while (proposal.kind === 'questions') {
    const fresh = proposal.questions.filter(({ key }) => answers.has(key) && !(key in given))
    for (const { key } of proposal.questions) asked.add(key)
    if (fresh.length === 0) break
    for (const question of fresh) given[question.key] = checked(question, answers.get(question.key) as string)
    proposal = proposedIn(file, proposeMapping(text, given))
  }
  const idle = [...answers.keys()].filter((key) => !(key in given))
  if (idle.length > 0)
    throw new BadInput(
      idle.map((key) =>
        problemOf(
          'logger.answer-unasked',
          '--answer',
          `${key}=${answers.get(key)}`,
          asked.size === 0
            ? 'no answer: nothing is asked'
            : `an answer to what is asked: ${[...asked].join(', ')}`,
          'Leave it out: the file itself says how that is.',
        ),
      ),
    )
  return proposal.kind === 'mapping'
    ? { mapping: proposal.mapping, questions: [] }
    : { mapping: null, questions: proposal.questions }
}

/** A kept mapping may be used for a file of the same logger only. */
export const orOtherHeadings = (
  file: string,
  kinds: readonly { readonly kind: string; readonly sentence: string }[],
): void => {
  const other = kinds.find(({ kind }) => kind === 'other headings')
  if (other === undefined) return
  orThrow({
    ok: false,
    problems: [
      problemOf(
        'logger.other-headings',
        file,
        other.sentence,
        'a file with the headings that the mapping was kept for',
        'Leave --mapping out and look at what is proposed for this file.',
      ),
    ],
  })
}
