import { isTrialsTable } from '../trial/exchange/trialsIn.ts'
import { proposeMapping } from './propose.ts'

/**
 * Whether a text is a table of readings over time, as loggers write it: neither JSON nor a table of trials, and with lines of
 * numbers that can be mapped, if only after questions.
 */
export const looksLikeLogger = (text: string): boolean => {
  if (/^\ufeff?\s*[{[]/.test(text) || isTrialsTable(text)) return false
  const proposal = proposeMapping(text, {})
  return proposal.ok || proposal.problems.every(({ code }) => code !== 'logger.no-table')
}
