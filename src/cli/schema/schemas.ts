import * as z from 'zod'
import { burnSchema } from './burn.ts'
import { predictionSchema } from './prediction.ts'
import { comparisonSchema } from './proof/comparison.ts'
import { metricsSchema } from './proof/metrics.ts'
import { orderSchema } from './proof/order.ts'
import { predictedSchema } from './proof/predicted.ts'

const published = (schema: z.ZodType, id: string): Record<string, unknown> => {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'output', target: 'draft-2020-12' })
  return { $schema, $id: id, ...rest }
}

/** The published JSON Schemas (draft 2020-12) of what commands print for programs. */
export const outputSchemas: Readonly<Record<string, () => Record<string, unknown>>> = {
  'prediction.schema.json': () => published(predictionSchema, 'urn:tinwright:prediction:1'),
  'burn.schema.json': () => published(burnSchema, 'urn:tinwright:burn:1'),
  'metrics.schema.json': () => published(metricsSchema, 'urn:tinwright:metrics:1'),
  'comparison.schema.json': () => published(comparisonSchema, 'urn:tinwright:comparison:1'),
  'order.schema.json': () => published(orderSchema, 'urn:tinwright:order:1'),
  'predicted.schema.json': () => published(predictedSchema, 'urn:tinwright:predicted:1'),
}
