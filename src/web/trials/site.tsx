import { useState } from 'react'
import { at } from './draft.ts'
import { FieldRow, type FormProps } from './fieldRow.tsx'
import { SITES, type SiteKey } from './fields.ts'

/** One of three ways to tell where water boils there. */
export const Site = (form: FormProps) => {
  const told = SITES.find(({ key }) => at(form.draft, ['weather', key]) !== undefined)?.key
  const [wanted, setWanted] = useState<SiteKey>('altitude')
  const key = told ?? wanted
  const site = SITES.find((one) => one.key === key) ?? SITES[2]
  const choose = (next: SiteKey): void => {
    if (told !== undefined) form.onChange(['weather', told], undefined)
    setWanted(next)
  }
  return (
    <fieldset className="trial-choice">
      <legend>Where water boils there, told by</legend>
      {SITES.map((one) => (
        <label key={one.key}>
          <input type="radio" name="site" checked={one.key === key} onChange={() => choose(one.key)} />
          {one.key === 'boilingPoint' ? 'boiling point' : one.key}
        </label>
      ))}
      <FieldRow field={{ path: ['weather', site.key], label: site.label, example: site.example }} {...form} />
    </fieldset>
  )
}
