import { useCell } from '../cell/useCell.ts'
import { type Issue, issue } from './issue.ts'

const set = <K extends keyof Issue>(key: K, value: Issue[K]): void =>
  issue.update((now) => ({ ...now, [key]: value }))

interface ChoiceProps<K extends keyof Issue> {
  readonly name: K
  readonly label: string
  readonly choices: readonly (readonly [value: Issue[K], words: string])[]
}

const Choice = <K extends keyof Issue>({ name, label, choices }: ChoiceProps<K>) => {
  const now = useCell(issue)
  return (
    <label>
      {label}
      <select value={now[name]} onChange={(event) => set(name, event.target.value as Issue[K])}>
        {choices.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
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
      <Choice
        name="paper"
        label="Paper"
        choices={[
          ['A4', 'A4'],
          ['Letter', 'Letter'],
          ['A3', 'A3 for templates, A4 for the rest'],
        ]}
      />
      <Choice
        name="solidFormat"
        label="Solids as"
        choices={[
          ['3mf', '3MF, with names'],
          ['stl', 'STL'],
        ]}
      />
      <Choice
        name="cardFormat"
        label="Cards as"
        choices={[
          ['png', 'PNG, pixels'],
          ['svg', 'SVG, lines'],
        ]}
      />
      <Choice
        name="cardTheme"
        label="Cards on"
        choices={[
          ['light', 'light paper'],
          ['dark', 'dark paper'],
        ]}
      />
    </form>
  )
}
