/**
 * A lane in which only the newest matters: one is under way, and of those that come meanwhile the last alone is asked
 * next. Whoever moves a hand faster than it is answered is answered for where the hand is.
 */
export const createLatest = <Q, A>(
  ask: (question: Q) => Promise<A>,
  onAnswer: (answer: A, question: Q) => void,
): ((question: Q) => void) => {
  let busy = false
  let next: { readonly question: Q } | null = null
  const go = (question: Q): void => {
    busy = true
    void ask(question).then((answer) => {
      busy = false
      onAnswer(answer, question)
      if (next === null || busy) return
      const { question: newest } = next
      next = null
      go(newest)
    })
  }
  return (question) => {
    if (busy) next = { question }
    else go(question)
  }
}
