import { changeLastingWord, lastingWord } from './lastingWord.ts'
import { client, linkDown, linkState, setLink } from './link.ts'

/** Without it the page cannot open offline. */
const LAST_WORKSHOP = 'workshop'

/** The workshop that this page is of, once it is known. */
let ours: string | null = null

/** Asks who answers under this address, and sets the link by it. */
export const whoIsThere = async (): Promise<boolean> => {
  const about = await client.call('about', {})
  if (!about.ok) {
    if (about.refusal.code !== 'not paired') linkDown()
    return false
  }
  ours ??= about.value.id
  if (about.value.id !== ours) {
    setLink({
      kind: 'another',
      sentence: `Another workshop answers now (${about.value.place}). What was not sent to the one on this page stays in this browser for it. Load the page again to see the other one.`,
    })
    return false
  }
  setLink({ kind: 'up' })
  return true
}

/** Between two looks whether the workshop is there. [ms] */
const LOOK_AGAIN = 1500

/** Resolves when the workshop of this page answers; `failed`: why the last thing sent was not answered. */
export const reachable = async (failed: unknown): Promise<void> => {
  let sure = failed === null && linkState.get().kind === 'up'
  while (!sure) {
    sure = await whoIsThere()
    if (sure) return
    await new Promise<void>((resolve) => {
      const stop = linkState.subscribe(() => linkState.get().kind === 'up' && done())
      const done = (): void => {
        stop()
        resolve()
      }
      setTimeout(done, LOOK_AGAIN)
    })
  }
}

/** The workshop of this page by its id: the one that answers, or else the one that answered this browser last. */
export const workshopHere = async (): Promise<string | null> => {
  if (!(await whoIsThere())) ours = await lastingWord(LAST_WORKSHOP)
  const workshop = ours
  if (workshop !== null) await changeLastingWord(LAST_WORKSHOP, () => workshop)
  return workshop
}
