import { useState } from 'react'
import type { Door } from '#wire/door.ts'
import { workshop } from '../workshop.ts'

/** For a device of the house: under which name it was let in, and how it goes again. */
export const ThisDevice = ({ standing }: { readonly standing: Door }) => {
  const [said, setSaid] = useState('')
  const leave = async (): Promise<void> => {
    const answer = await workshop.ask('leave', {})
    if (answer.ok) location.assign('/')
    else setSaid(answer.refusal.sentence)
  }
  return (
    <section>
      <h2>This device</h2>
      <p>
        It was let in as {standing.device ?? 'a device without a name'}. What you do here goes to the machine
        with the workshop; without its network it waits in this browser.
      </p>
      <div className="row">
        <button type="button" onClick={() => void leave()}>
          Leave the workshop on this device
        </button>
      </div>
      <p role="status">{said}</p>
    </section>
  )
}
