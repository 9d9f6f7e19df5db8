import { at, changed, type Draft } from './draft.ts'

/** Mishaps, each a line: a comparison can leave such burns out. */
export const WentWrong = ({
  draft,
  onDraft,
}: {
  readonly draft: Draft
  readonly onDraft: (change: (draft: Draft) => Draft) => void
}) => {
  const said = at(draft, ['wentWrong'])
  const lines = Array.isArray(said) ? said.map(String) : []
  const set = (index: number, text: string): void =>
    onDraft((now) => changed(now, ['wentWrong', index], text === '' ? undefined : text))
  return (
    <fieldset className="trial-group">
      <legend>What went wrong</legend>
      {[...lines, ''].map((line, i) => (
        <input
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is known by its place alone
          key={i}
          aria-label={i < lines.length ? `Mishap ${i + 1}` : 'Another mishap'}
          placeholder={i === 0 ? 'the pot was knocked, the flame went out twice …' : 'and …'}
          value={line}
          maxLength={500}
          onChange={(event) => set(i, event.target.value)}
        />
      ))}
    </fieldset>
  )
}
