import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { outputSchemas } from '#cli/schema/schemas.ts'
import { exampleFiles, exampleStoves, tinwright } from './memory.ts'
import { spoiltStoves } from './spoilt.ts'

const files = { ...exampleFiles, ...spoiltStoves }

const committed = (name: string): object =>
  JSON.parse(readFileSync(new URL(`../../schema/${name}`, import.meta.url), 'utf8'))

it.each(Object.entries(outputSchemas))(
  'schema/%s is current; else run node scripts/schema.ts',
  (name, schema) => {
    expect(committed(name)).toEqual(JSON.parse(JSON.stringify(schema())))
  },
)

/** Every number a program can read, by its path in the schema. */
const numbers = (schema: unknown, path = ''): readonly (readonly [string, string])[] => {
  if (typeof schema !== 'object' || schema === null) return []
  if (Array.isArray(schema)) return schema.flatMap((one, i) => numbers(one, `${path}/${i}`))
  const own = schema as { readonly type?: unknown; readonly description?: unknown }
  const description = typeof own.description === 'string' ? own.description : ''
  const here = own.type === 'number' ? [[path, description] as const] : []
  return [
    ...here,
    ...Object.entries(schema).flatMap(([key, value]) =>
      // The description of a number that may be null stands one level up.
      numbers(
        key === 'anyOf' && Array.isArray(value)
          ? value.map((one) => ({ description, ...(one as object) }))
          : value,
        `${path}/${key}`,
      ),
    ),
  ]
}

/** Numbers that must be found, or the search has gone blind. */
const FEWEST: Readonly<Record<string, number>> = {
  'metrics.schema.json': 4,
  'comparison.schema.json': 20,
  'order.schema.json': -1,
  'predicted.schema.json': 15,
}

describe.each(Object.keys(outputSchemas))('schema/%s', (name) => {
  it('says the unit of every number', () => {
    const all = numbers(committed(name)).filter(([path]) => !path.endsWith('/additionalProperties'))
    expect(all.length).toBeGreaterThan(FEWEST[name] ?? 80)
    expect(all.filter(([, description]) => !/\[[^\]]+\]/.test(description)).map(([path]) => path)).toEqual([])
  })
})

// ajv compiles and validates without any part of this house or of zod.
describe('an independent validator', () => {
  const ajv = new Ajv2020({ strict: true, strictRequired: false, allErrors: true })
  const schemas = {
    predict: ajv.compile(committed('prediction.schema.json')),
    burn: ajv.compile(committed('burn.schema.json')),
  }
  const check = async (command: keyof typeof schemas, args: readonly string[]): Promise<unknown> => {
    const { out, err } = await tinwright([command, ...args, '--json'], files)
    expect(err).toBe('')
    const answer: unknown = JSON.parse(out)
    schemas[command](answer)
    expect(schemas[command].errors).toBeNull()
    return answer
  }

  const stoves = [...exampleStoves, ...Object.keys(spoiltStoves)]

  it.each(stoves)('accepts what predict and burn say of %s', async (file) => {
    await check('predict', [file, '--bands', '14'])
    await check('burn', [file, '--bands', '14'])
  })

  it('accepts every option of a burn', async () => {
    const options = ['--hot', '--no-lid', '--new-tin', '--skirt', '8 mm x 60 mm', '--pot', '120 mm']
    const turns = ['--damper', '5 min: 8 deg', '--damper', 'boil: 5 deg']
    const site = ['--wind', '1 m/s', '--wind-from', '40 deg', '--altitude', '900 m']
    await check('burn', [
      'redshank.stove.json',
      ...options,
      ...turns,
      ...site,
      '--trip',
      '2 days, 1 boil, 0.5 L',
      '--bands',
      '3',
    ])
  })

  it('accepts a stove that does not burn, and one without bands', async () => {
    const shut = await check('burn', ['redshank.stove.json', '--damper', '1 min: 15 deg', '--bands', '0'])
    expect(shut).toMatchObject({ kind: 'no burn' })
    await check('burn', ['heron.stove.json', '--bands', '0'])
    await check('predict', ['heron.stove.json', '--bands', '0'])
  })

  it.each(['stove', 'series', 'bands', 'cautions'])('misses %s in an answer without it', async (key) => {
    const { out } = await tinwright(['burn', 'heron.stove.json', '--bands', '0', '--json'], files)
    const { [key]: _, ...rest } = JSON.parse(out) as Record<string, unknown>
    expect(schemas.burn(rest)).toBe(false)
    expect(schemas.burn({ ...rest, [key]: _, more: 1 })).toBe(false)
  })
})
