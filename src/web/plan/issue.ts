import { createCell, type OpenCell } from '../cell/cell.ts'

/** Who publishes a plan, and how it is to come out. Of this browser. */
export interface Issue {
  readonly author: string
  readonly licence: string
  readonly paper: 'A4' | 'Letter' | 'A3'
  readonly solidFormat: '3mf' | 'stl'
  readonly cardFormat: 'png' | 'svg'
  readonly cardTheme: 'light' | 'dark'
}

export const USUAL_ISSUE: Issue = {
  author: '',
  licence: '',
  paper: 'A4',
  solidFormat: '3mf',
  cardFormat: 'png',
  cardTheme: 'light',
}

const CHOICES = {
  paper: ['A4', 'Letter', 'A3'],
  solidFormat: ['3mf', 'stl'],
  cardFormat: ['png', 'svg'],
  cardTheme: ['light', 'dark'],
} as const

/** What was kept, as far as it still means something. */
export const issueFrom = (text: string | null): Issue => {
  try {
    const kept = JSON.parse(text ?? '{}') as Record<string, unknown>
    const words = (key: 'author' | 'licence'): string => {
      const said = kept[key]
      return typeof said === 'string' ? said.slice(0, 200) : ''
    }
    const choice = <K extends keyof typeof CHOICES>(key: K): Issue[K] =>
      ((CHOICES[key] as readonly unknown[]).includes(kept[key]) ? kept[key] : USUAL_ISSUE[key]) as Issue[K]
    return {
      author: words('author'),
      licence: words('licence'),
      paper: choice('paper'),
      solidFormat: choice('solidFormat'),
      cardFormat: choice('cardFormat'),
      cardTheme: choice('cardTheme'),
    }
  } catch {
    return USUAL_ISSUE
  }
}

const KEY = 'tinwright.issue'

const kept = (): string | null => {
  try {
    return localStorage.getItem(KEY)
  } catch {
    return null
  }
}

/** As this browser remembers it. */
export const issue: OpenCell<Issue> = createCell(issueFrom(kept()))
issue.subscribe(() => {
  try {
    localStorage.setItem(KEY, JSON.stringify(issue.get()))
  } catch {
    // A browser that keeps nothing forgets it, no more.
  }
})

/** This day, `2031-05-17`, where the maker is. */
export const today = (): string => {
  const now = new Date()
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
