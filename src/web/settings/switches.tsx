import { Choice } from './choice.tsx'
import { look, units } from './settings.ts'

export const UnitSwitch = () => (
  <Choice
    legend="Lengths in"
    cell={units}
    options={[
      { value: 'mm', name: 'mm' },
      { value: 'in', name: 'inch' },
      { value: 'both', name: 'both' },
    ]}
  />
)

export const LookSwitch = () => (
  <Choice
    legend="Look"
    cell={look}
    options={[
      { value: 'light', name: 'light' },
      { value: 'dark', name: 'dark' },
      { value: 'as the device', name: 'as the device' },
    ]}
  />
)
