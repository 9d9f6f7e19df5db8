import { fuelTable } from '#science/fuel/table.ts'
import type { Path } from './draft.ts'

/** One blank of the form. */
export interface TrialField {
  readonly path: Path
  readonly label: string
  /** How it is taken, where that is not plain. */
  readonly how?: string
  /** Shown in the empty blank. */
  readonly example?: string
  readonly kind?: 'text' | 'long' | 'day' | 'whole'
  readonly choices?: readonly { readonly value: string; readonly label: string }[]
  /** Need not be told. */
  readonly optional?: true
}

export interface FieldGroup {
  readonly title: string
  readonly fields: readonly TrialField[]
}

const FUELS = [...fuelTable].map(([value, { label }]) => ({ value, label }))

export const ABOUT: FieldGroup = {
  title: 'The burn',
  fields: [
    { path: ['name'], label: 'Name of this burn', example: 'Heron, first morning' },
    { path: ['day'], label: 'Day', kind: 'day' },
    { path: ['place'], label: 'Which burn of its series', kind: 'whole', optional: true },
    {
      path: ['block'],
      label: 'Block',
      how: 'What burns have in common besides the stove; the day if left empty.',
      optional: true,
    },
    {
      path: ['start'],
      label: 'The stove was',
      choices: [
        { value: 'cold', label: 'cold' },
        { value: 'hot', label: 'hot from another burn' },
      ],
    },
    { path: ['about'], label: 'Remarks', kind: 'long', optional: true },
  ],
}

export const STOVE: FieldGroup = {
  title: 'The stove as it stood there',
  fields: [
    { path: ['stove', 'name'], label: 'Stove' },
    {
      path: ['stove', 'variant'],
      label: 'Variant',
      how: 'What tells it from its sisters; burns of one variant are compared together.',
      example: 'B, more secondary air',
      optional: true,
    },
    {
      path: ['stove', 'asBuilt'],
      label: 'Where the tin differs from the drawing',
      kind: 'long',
      optional: true,
    },
  ],
}

export const FUEL: FieldGroup = {
  title: 'Fuel',
  fields: [
    { path: ['fuel', 'kind'], label: 'Fuel', choices: FUELS },
    { path: ['fuel', 'batch'], label: 'Sack or bundle', example: 'pellets, sack 2', optional: true },
    {
      path: ['fuel', 'weighed'],
      label: 'The fuel at the start was weighed',
      how: 'The prediction fills the can by it, and counts as burnt what the scale counts.',
      choices: [
        { value: 'before lighting', label: 'before lighting' },
        { value: 'at the start', label: 'as the first phase began' },
      ],
      optional: true,
    },
  ],
}

export const KINDLING: FieldGroup = {
  title: 'Kindling',
  fields: [
    {
      path: ['kindling', 'what'],
      label: 'Lit with',
      example: 'birch bark',
      optional: true,
    },
    { path: ['kindling', 'weight'], label: 'How much', example: '4 g or 0.14 oz', optional: true },
    {
      path: ['kindling', 'weighed'],
      label: 'Its weight is',
      how: 'In that of the fuel, it counts as fuel.',
      choices: [
        { value: 'apart', label: 'not in that of the fuel' },
        { value: 'with the fuel', label: 'in that of the fuel' },
      ],
      optional: true,
    },
  ],
}

export const WEATHER: FieldGroup = {
  title: 'Air',
  fields: [
    {
      path: ['weather', 'temperature'],
      label: 'Air temperature, in the shade',
      example: '18 °C or 64 °F',
    },
    {
      path: ['weather', 'wind'],
      label: 'Wind at the stove',
      example: '1.5 m/s or 3 mph',
      optional: true,
    },
  ],
}

export const POT: FieldGroup = {
  title: 'Pot',
  fields: [
    {
      path: ['pot', 'weight'],
      label: 'Empty pot, dry',
      how: 'With what stays in it. Its lid on the scale or not throughout.',
      example: '412 g or 14.5 oz',
    },
    {
      path: ['pot', 'diameter'],
      label: 'Outside diameter',
      example: '160 mm or 6 5/16 in',
      optional: true,
    },
  ],
}

export const INSTRUMENTS: FieldGroup = {
  title: 'What it was measured with',
  fields: [
    {
      path: ['instruments', 'scale', 'resolution'],
      label: 'Scale: smallest step',
      example: '1 g or 0.05 oz',
    },
    {
      path: ['instruments', 'scale', 'accuracy'],
      label: 'Scale: may be off by',
      example: '0.5 %',
      optional: true,
    },
    {
      path: ['instruments', 'thermometer', 'resolution'],
      label: 'Thermometer: smallest step',
      how: 'A step of temperature, so K (a kelvin is a step of 1 °C).',
      example: '0.1 K',
    },
    {
      path: ['instruments', 'thermometer', 'accuracy'],
      label: 'Thermometer: may be off by',
      example: '1 K',
      optional: true,
    },
    { path: ['instruments', 'clock', 'resolution'], label: 'Clock: smallest step', example: '1 s' },
  ],
}

/** What is told of the place so that the boiling point follows; the first is best. */
export const SITES = [
  {
    key: 'boilingPoint',
    label: 'Boiling point, as the thermometer shows it there',
    example: '99.2 °C or 210.6 °F',
  },
  {
    key: 'pressure',
    label: 'Air pressure there, not reduced to sea level',
    example: '985 hPa or 29.09 inHg',
  },
  { key: 'altitude', label: 'Height above the sea', example: '240 m or 790 ft' },
] as const

export type SiteKey = (typeof SITES)[number]['key']
