import { useState } from 'react'
import type { Answers, Question } from '#proof/logger/mapping.ts'

/** What the file does not tell, asked with what stands in it. Nothing is guessed. */
export const Questions = ({
  questions,
  onAnswer,
}: {
  readonly questions: readonly Question[]
  readonly onAnswer: (answers: Answers) => void
}) => {
  const [said, setSaid] = useState<Answers>({})
  const all = questions.every(({ key }) => said[key] !== undefined)
  return (
    <form
      className="logger-questions"
      onSubmit={(event) => {
        event.preventDefault()
        if (all) onAnswer(said)
      }}
    >
      <p>The file does not tell this; nothing is guessed:</p>
      {questions.map(({ key, ask, seen, choices }) => (
        <fieldset key={key} className="trial-choice">
          <legend>
            {ask} <span className="muted">In the file: {seen}</span>
          </legend>
          {choices.map((choice) => (
            <label key={choice}>
              <input
                type="radio"
                name={key}
                checked={said[key] === choice}
                onChange={() => setSaid((now) => ({ ...now, [key]: choice }))}
              />
              {choice}
            </label>
          ))}
        </fieldset>
      ))}
      <button type="submit" disabled={!all}>
        That is how it is
      </button>
    </form>
  )
}
