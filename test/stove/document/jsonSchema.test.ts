import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, test } from 'vitest'
import { quantities } from '#basis/quantities.ts'
import { jsonSchemas } from '#stove/document/jsonSchema.ts'
import { exampleNamed, shelfExample, stoveExamples } from './examples.ts'

const committed = (name: string): object =>
  JSON.parse(readFileSync(new URL(`../../../schema/${name}`, import.meta.url), 'utf8'))

test.each(Object.entries(jsonSchemas))(
  'schema/%s is current; else run node scripts/schema.ts',
  (name, schema) => {
    expect(committed(name)).toEqual(JSON.parse(JSON.stringify(schema())))
  },
)

test('the schema tells what the table of quantities says of a length', () => {
  expect(JSON.stringify(committed('stove.schema.json'))).toContain(quantities.canSeamDiameter.description)
})

// ajv compiles and validates without any part of this house or of zod.
describe('an independent validator', () => {
  const ajv = new Ajv2020({ strict: true, strictRequired: false, allErrors: true })
  const stove = ajv.compile(committed('stove.schema.json'))
  const shelf = ajv.compile(committed('shelf.schema.json'))

  test.each(stoveExamples)('accepts $name', ({ text }) => {
    stove(JSON.parse(text))
    expect(stove.errors).toBeNull()
  })

  test('accepts the shelf', () => {
    shelf(JSON.parse(shelfExample.text))
    expect(shelf.errors).toBeNull()
  })

  const OWN = {
    name: 'hazel twigs',
    like: 'twigs',
    filling: { weight: '180 g', volume: '0.6 L' },
    dried: { before: '100 g', after: '87 g' },
    pieces: { diameter: '9 mm', length: '35 mm', weighed: { count: 20, weight: '31 g' } },
  }

  test('accepts a fuel of the maker’s own', () => {
    const file = JSON.parse(exampleNamed('redshank').text)
    file.fuel = { own: OWN, level: file.fuel.level, fines: '2 %', packing: 'upright' }
    stove(file)
    expect(stove.errors).toBeNull()
  })

  test.each<[string, readonly (string | number)[], unknown]>([
    ['a fuel of the table and one’s own at once', ['fuel', 'own'], OWN],
    ['no fuel', ['fuel'], { level: '60 mm' }],
    [
      'an own fuel of which nothing was measured',
      ['fuel'],
      { own: { name: 'x', like: 'twigs' }, level: '60 mm' },
    ],
    ['another packing', ['fuel', 'packing'], 'on end'],
    ['an unknown key', ['colour'], 'red'],
    ['a bare number for a length', ['fuel', 'level'], 60],
    ['no holes', ['parts', 'shell', 'openings', 'intake', 'count'], 0],
    ['a billion holes', ['parts', 'shell', 'openings', 'intake', 'count'], 1e9],
    ['two kinds of hole at once', ['parts', 'shell', 'openings', 'intake', 'hole', 'diameter'], '5 mm'],
    ['a newer format', ['format'], 'tinwright/stove@2'],
    ['a can without a size', ['parts', 'shell', 'can'], { bodyWall: '0.2 mm' }],
    ['an unknown end', ['parts', 'shell', 'top'], { end: 'ajar' }],
    ['a place without a host', ['assembly', 1], { part: 'damper', place: 'slips over' }],
    ['a name that begins with a digit', ['parts', '2nd shell'], { form: 'band' }],
    [
      'both pitch and count',
      ['parts', 'fuel can', 'openings', 'floor', 'layout', 'hexagonal', 'pitch'],
      '9 mm',
    ],
  ])('refuses %s', (_, path, value) => {
    const file = JSON.parse(exampleNamed('redshank').text)
    const holder = path.slice(0, -1).reduce((here, step) => here[step], file)
    holder[path.at(-1) as string] = value
    expect(stove(file)).toBe(false)
  })
})
