import './startStove.css'
import { useState } from 'react'
import greylag from '../../../examples/greylag.stove.json?raw'
import heron from '../../../examples/heron.stove.json?raw'
import redshank from '../../../examples/redshank.stove.json?raw'
import { FileButton } from '../files/fileButton.tsx'
import { MakingCautions } from '../plan/cautions.tsx'
import type { Place } from '../routes/routes.ts'
import { FromTwoCans } from './fromTwoCans.tsx'
import { layOnBench, stoveFromText } from './newStove.ts'

const EXAMPLES = [redshank, heron, greylag].flatMap((text) => {
  const read = stoveFromText(text)
  return 'file' in read ? [read.file] : []
})

const FromElsewhere = () => {
  const [text, setText] = useState('')
  const [sentence, setSentence] = useState<string | null>(null)
  const take = async (said: string, note: string): Promise<void> => {
    const read = stoveFromText(said)
    setSentence('file' in read ? await layOnBench(read.file, note) : read.sentence)
  }
  const takeFile = async (file: File): Promise<void> => take(await file.text(), `From the file ${file.name}.`)
  return (
    <div className="start-others">
      <section>
        <h2>From an example</h2>
        <ul className="start-examples">
          {EXAMPLES.map((file) => (
            <li key={file.name}>
              <button
                type="button"
                onClick={() =>
                  void layOnBench(
                    { ...file, name: `${file.name}, my own` },
                    `From the example ${file.name}.`,
                  ).then(setSentence)
                }
              >
                {file.name}
              </button>{' '}
              <span className="muted">{file.about}</span>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>From a file</h2>
        <FileButton
          name="Choose a stove file"
          field="Stove file"
          accept=".json,application/json"
          onFiles={([file]) => file !== undefined && void takeFile(file)}
        />
      </section>
      <section>
        <h2>From the code of a printed plan</h2>
        <form
          onSubmit={(event) => {
            event.preventDefault()
            void take(text, 'From the code of a plan.')
          }}
        >
          <label htmlFor="start-code">
            Scan the square code on the last page of a plan with any reader, and paste its whole text.
          </label>
          <textarea id="start-code" rows={4} value={text} onChange={(event) => setText(event.target.value)} />
          <button type="submit" disabled={text.trim() === ''}>
            Read it
          </button>
        </form>
      </section>
      <p role="alert" className={sentence === null ? 'unseen' : 'start-said'}>
        {sentence}
      </p>
    </div>
  )
}

/** Where a stove begins: two cans, an example, a file, or the code of somebody's plan. */
export const StartStove = (_: { readonly place: Extract<Place, { readonly at: 'start' }> }) => (
  <div className="start">
    <h1>Start a stove</h1>
    <section aria-labelledby="start-two">
      <h2 id="start-two">From two cans of the shelf</h2>
      <FromTwoCans />
    </section>
    <FromElsewhere />
    <MakingCautions />
  </div>
)
