import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  amended,
  BEGIN_AGAIN,
  beginMirror,
  begunAgain,
  committed,
  isSameDeed,
  isUnsaved,
  KEPT_STEPS,
  type Mirror,
  moved,
  redoLabel,
  savedAs,
  textNow,
  undoLabel,
} from '#web/workshop/mirror.ts'

const AT = '2031-05-17T14:05:00Z'
const begun = beginMirror({ document: 'd', client: 'w', base: 'r1', baseText: 'one', updated: AT })
const edit = (mirror: Mirror, label: string, text: string): Mirror => committed(mirror, { label, text }, AT)

describe('the edit of one window', () => {
  it('begins with what was saved, and has nothing to take back', () => {
    expect([textNow(begun), isUnsaved(begun), undoLabel(begun), redoLabel(begun)]).toEqual([
      'one',
      false,
      null,
      null,
    ])
  })

  it('names what undo takes back and what redo brings again', () => {
    const two = edit(edit(begun, 'move the upper row', 'two'), 'drill 8 mm', 'three')
    expect(undoLabel(two)).toBe('drill 8 mm')
    const back = moved(two, -1, AT)
    expect([textNow(back), undoLabel(back), redoLabel(back)]).toEqual([
      'two',
      'move the upper row',
      'drill 8 mm',
    ])
  })

  it('drops what was undone when something else is done', () => {
    const other = edit(moved(edit(begun, 'a', 'two'), -1, AT), 'b', 'four')
    expect([textNow(other), redoLabel(other), other.steps.length]).toEqual(['four', null, 2])
  })

  it('makes no step of the same text', () => {
    expect(edit(begun, 'nothing', 'one')).toBe(begun)
  })

  it('keeps a held key one step, and says where it came to', () => {
    const held = amended(
      edit(begun, 'move ring to 31 mm', 'two'),
      { label: 'move ring to 32 mm', text: 'three' },
      AT,
    )
    expect([held.steps.length, textNow(held), undoLabel(held)]).toEqual([2, 'three', 'move ring to 32 mm'])
    expect(textNow(moved(held, -1, AT))).toBe('one')
  })

  it('tells a thing done further from another', () => {
    expect(isSameDeed('move ring to 31 mm', 'move ring to 32 mm')).toBe(true)
    expect(isSameDeed('move ring to 31 mm', 'move floor to 32 mm')).toBe(false)
    expect(isSameDeed('drill ring with 7 mm', 'move ring to 31 mm')).toBe(false)
  })

  it('keeps its undo over a save', () => {
    const saved = savedAs(edit(begun, 'a', 'two'), 'r2', AT)
    expect([saved.base, isUnsaved(saved), undoLabel(saved)]).toEqual(['r2', false, 'a'])
    expect(isUnsaved(moved(saved, -1, AT))).toBe(true)
  })

  it('has what was here one undo away after taking theirs', () => {
    const theirs = begunAgain(edit(begun, 'a', 'mine'), { id: 'r9', text: 'theirs' }, AT)
    expect([textNow(theirs), isUnsaved(theirs), undoLabel(theirs)]).toEqual(['theirs', false, BEGIN_AGAIN])
    expect(textNow(moved(theirs, -1, AT))).toBe('mine')
  })

  it('never loses the text that is shown, however it is edited, and keeps no more steps than the workshop', () => {
    const action = fc.oneof(
      fc.integer({ min: 0, max: 5 }).map((n) => ({ do: 'edit', text: String(n) }) as const),
      fc.constant({ do: 'undo' } as const),
      fc.constant({ do: 'redo' } as const),
    )
    fc.assert(
      fc.property(fc.array(action, { maxLength: 500 }), (actions) => {
        let mirror = begun
        let texts = ['one']
        let at = 0
        for (const one of actions) {
          if (one.do === 'edit') {
            if (one.text !== texts[at]) {
              texts = [...texts.slice(0, at + 1), one.text].slice(-KEPT_STEPS)
              at = texts.length - 1
            }
            mirror = edit(mirror, 'e', one.text)
          } else {
            const by = one.do === 'undo' ? -1 : 1
            if (texts[at + by] !== undefined) at += by
            mirror = moved(mirror, by, AT)
          }
          expect(textNow(mirror)).toBe(texts[at])
        }
        expect(mirror.steps.map(({ text }) => text)).toEqual(texts)
      }),
      { numRuns: 50 },
    )
  })
})
