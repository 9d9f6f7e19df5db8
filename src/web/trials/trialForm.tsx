import type { ReactNode } from 'react'
import { FieldRow, type FormProps } from './fieldRow.tsx'
import { ABOUT, type FieldGroup, FUEL, INSTRUMENTS, KINDLING, POT, STOVE, WEATHER } from './fields.ts'
import { Lid } from './lid.tsx'
import { Moisture } from './moisture.tsx'
import { Site } from './site.tsx'

const Group = ({
  group,
  children,
  ...form
}: FormProps & { readonly group: FieldGroup; readonly children?: ReactNode }) => (
  <fieldset className="trial-group">
    <legend>{group.title}</legend>
    {group.fields.map((field) => (
      <FieldRow key={field.path.join('.')} field={field} {...form} />
    ))}
    {children}
  </fieldset>
)

/** Everything about a burn that is known before it is lit. */
export const TrialForm = (form: FormProps) => (
  <div className="trial-form">
    <Group group={ABOUT} {...form} />
    <Group group={STOVE} {...form} />
    <Group group={FUEL} {...form}>
      <Moisture {...form} />
    </Group>
    <Group group={KINDLING} {...form} />
    <Group group={WEATHER} {...form}>
      <Site {...form} />
    </Group>
    <Group group={POT} {...form}>
      <Lid {...form} />
    </Group>
    <Group group={INSTRUMENTS} {...form} />
  </div>
)
