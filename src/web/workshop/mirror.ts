/** As many edits back as the workshop keeps (src/store/drafts). */
export const KEPT_STEPS = 200

/** What the workshop calls the step with which an edit begins again from another revision. */
export const BEGIN_AGAIN = 'begin again'

export interface MirrorStep {
  /** What was done to come here: `move the upper row`. */
  readonly label: string
  readonly text: string
}

/**
 * One window's edit of one document as this browser knows it: the same list of texts that the workshop keeps
 * as a draft, so that it can be shown before the workshop has heard of it.
 */
export interface Mirror {
  readonly document: string
  readonly client: string
  /** The revision it goes on from. */
  readonly base: string
  readonly baseText: string
  readonly steps: readonly MirrorStep[]
  /** Index of the step that is shown. */
  readonly at: number
  /** The workshop refused to go on with this edit, and why; its text is kept here. */
  readonly refused: string | null
  /** Time of the last change. */
  readonly updated: string
}

export interface Begin {
  readonly document: string
  readonly client: string
  readonly base: string
  readonly baseText: string
  readonly updated: string
}

export const beginMirror = (begin: Begin): Mirror => ({
  ...begin,
  steps: [{ label: '', text: begin.baseText }],
  at: 0,
  refused: null,
})

export const textNow = ({ steps, at, baseText }: Mirror): string => steps[at]?.text ?? baseText

/** It says something else than the revision it goes on from. */
export const isUnsaved = (mirror: Mirror): boolean => textNow(mirror) !== mirror.baseText

export const undoLabel = ({ steps, at }: Mirror): string | null =>
  at > 0 ? (steps[at]?.label ?? null) : null

export const redoLabel = ({ steps, at }: Mirror): string | null => steps[at + 1]?.label ?? null

/** One step on; what was undone gives way. The same text again is no step. */
export const committed = (mirror: Mirror, step: MirrorStep, updated: string): Mirror => {
  if (step.text === textNow(mirror)) return mirror
  const all = [...mirror.steps.slice(0, mirror.at + 1), step]
  const steps = all.slice(-KEPT_STEPS)
  return { ...mirror, steps, at: steps.length - 1, updated }
}

/** `move ring to 31 mm` and `move ring to 32 mm` are one thing done further. */
export const isSameDeed = (one: string, other: string): boolean => {
  const deed = (label: string): string => label.replace(/ (?:to|by) .*$/, '')
  return deed(one) === deed(other)
}

/** The last step goes a little further, and stays one step: a key that is held down. */
export const amended = (mirror: Mirror, step: MirrorStep, updated: string): Mirror => {
  const { steps, at } = mirror
  const last = steps[at]
  if (last === undefined || last.text === step.text) return mirror
  return { ...mirror, steps: [...steps.slice(0, at), step], updated }
}

/** One step back (-1) or forth (1); the same mirror where there is none. */
export const moved = (mirror: Mirror, by: -1 | 1, updated: string): Mirror => {
  const at = mirror.at + by
  return mirror.steps[at] === undefined ? mirror : { ...mirror, at, updated }
}

/** It was saved as this revision, and goes on from there with all its undo. */
export const savedAs = (mirror: Mirror, revision: string, updated: string): Mirror => ({
  ...mirror,
  base: revision,
  baseText: textNow(mirror),
  updated,
})

/** Goes on from a revision that somebody else saved; what was here is one undo away. */
export const begunAgain = (
  mirror: Mirror,
  revision: { readonly id: string; readonly text: string },
  updated: string,
): Mirror => {
  const { id: base, text: baseText } = revision
  const on = committed(mirror, { label: BEGIN_AGAIN, text: baseText }, updated)
  return { ...on, base, baseText, refused: null, updated }
}
