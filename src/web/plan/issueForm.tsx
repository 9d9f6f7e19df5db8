import { useCell } from '../cell/useCell.ts'
import { type Issue, issue } from './issue.ts'

const set = <K extends keyof Issue>(key: K, value: Issue[K]): void =>
  issue.update((now) => ({ ...now, [key]: value }))

interface ChoiceProps {
  readonly name: 'paper' | 'solidFormat' | 'cardFormat' | 'cardTheme'
  readonly label: string
  /** What may be chosen, and how it is called. */
  readonly words: Readonly<Record<string, string>>
}

type Chosen<K extends keyof Issue> = {
  readonly name: K
  readonly label: string
  readonly words: Readonly<Record<Issue[K], string>>
}

const CHOICES: readonly (
  | Chosen<'paper'>
  | Chosen<'solidFormat'>
  | Chosen<'cardFormat'>
  | Chosen<'cardTheme'>
)[] = [
  {
    name: 'paper',
    label: 'Paper',
    words: { A4: 'A4', Letter: 'Letter', A3: 'A3 for templates, A4 for the rest' },
  },
  { name: 'solidFormat', label: 'Solids as', words: { '3mf': '3MF, with names', stl: 'STL' } },
  { name: 'cardFormat', label: 'Cards as', words: { png: 'PNG, pixels', svg: 'SVG, lines' } },
  { name: 'cardTheme', label: 'Cards on', words: { light: 'light paper', dark: 'dark paper' } },
]

const Choice = ({ name, label, words }: ChoiceProps) => {
  const now = useCell(issue)
  return (
    <label>
      {label}
      <select value={now[name]} onChange={(event) => set(name, event.target.value as Issue[typeof name])}>
        {Object.entries(words).map(([value, called]) => (
          <option key={value} value={value}>
            {called}
          </option>
        ))}
      </select>
    </label>
  )
}

/** What goes on the plan besides the stove, and in which form it comes. Kept in this browser. */
export const IssueForm = ({
  date,
  onDate,
}: {
  readonly date: string
  readonly onDate: (date: string) => void
}) => {
  const { author, licence } = useCell(issue)
  return (
    <form className="plan-issue" onSubmit={(event) => event.preventDefault()}>
      <h2>What goes on it</h2>
      <label>
        By
        <input
          value={author}
          maxLength={200}
          autoComplete="name"
          placeholder="nobody named"
          onChange={(event) => set('author', event.target.value)}
        />
      </label>
      <label>
        Terms
        <input
          value={licence}
          maxLength={200}
          list="plan-licences"
          placeholder="none named"
          onChange={(event) => set('licence', event.target.value)}
        />
        <datalist id="plan-licences">
          <option value="CC BY-SA 4.0" />
          <option value="CC BY 4.0" />
          <option value="CC0 1.0" />
        </datalist>
      </label>
      <label>
        Day
        <input type="date" value={date} required onChange={(event) => onDate(event.target.value)} />
      </label>
      {CHOICES.map(({ name, ...choice }) => (
        <Choice key={name} name={name} {...choice} />
      ))}
    </form>
  )
}
