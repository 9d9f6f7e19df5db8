import { openWorkshop } from '#store/open.ts'

// A program that saves without end (or so many times) and is killed in the middle: `node saver.ts FILE CLIENT
// [SAVES]`. Says of every save that was acknowledged so, on its output, at once.

const [file = '', client = '', saves = 'Infinity'] = process.argv.slice(2)
const at = '2031-05-17T14:05:00Z'
const opened = await openWorkshop({ file }, { at, beginAs: null })
if (!opened.ok) throw new Error(opened.refusal.sentence)
const shop = opened.value

let count = 0
const act = () => ({ id: `${client}-step-${++count}`, client, at })
/** A few pages of the database each, so that a kill can hit between them. */
const text = (word: string): string => `${word}\n${word.repeat(700)}`

const said = (line: string): void => {
  // Straight to the pipe: what is written stays there when this program dies.
  process.stdout.write(`${line}\n`)
}

const document = `${client}-stove`
let head = `${client}-0`
const made = await shop.create(act(), {
  ...{ id: document, kind: 'stove', name: client, revision: head, text: text(head), note: '' },
})
if (!made.ok) throw new Error(made.refusal.sentence)
said(`revision ${head}`)
let number = 0
for (let n = 1; n <= Number(saves); n++) {
  const revision = `${client}-${n}`
  const draft = await shop.autosave({
    ...{ document, client, at, number, base: head, text: text(revision), label: 'edit' },
  })
  if (!draft.ok) throw new Error(draft.refusal.sentence)
  said(`draft ${revision}`)
  const saved = await shop.save(act(), {
    ...{ document, base: head, revision, text: text(revision), note: '' },
    draft: { number: draft.value.number },
  })
  if (!saved.ok) throw new Error(saved.refusal.sentence)
  said(`revision ${revision}`)
  head = revision
  number = draft.value.number + 1
}
