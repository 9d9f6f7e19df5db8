import { describe, expect, it } from 'vitest'
import { issueFrom, USUAL_ISSUE } from '#web/plan/issue.ts'

describe('what a browser remembers of plans', () => {
  it('comes back as it was kept', () => {
    const kept = {
      ...USUAL_ISSUE,
      author: 'Ada of the Long Bank',
      paper: 'Letter',
      cardFormat: 'svg',
    } as const
    expect(issueFrom(JSON.stringify(kept))).toEqual(kept)
  })

  it.each([[null], ['not JSON'], ['[]'], ['{"paper":"A5","author":7,"cardTheme":"blue"}']])(
    'falls back to the usual where it means nothing: %s',
    (text) => expect(issueFrom(text)).toEqual(USUAL_ISSUE),
  )
})
