import { expect, test } from 'vitest'
import { z } from 'zod'
import { namesInFields } from '@/lib/kitchen/calculators/names-in-fields'
import { fieldsOfSchema } from '@/lib/kitchen/calculators/shape-of-schema'

test('names and choices are found however deep, each once', () => {
  const schema = z.strictObject({
    rows: z.array(z.strictObject({ arm: z.string(), kind: z.optional(z.enum(['flat', 'round'])) })),
    arm: z.nullable(z.string()),
    warnings: z.array(z.enum(['round', 'odd'])),
  })
  expect(namesInFields(fieldsOfSchema(schema, 'output'))).toEqual({
    fields: ['rows', 'arm', 'kind', 'warnings'],
    choices: ['flat', 'round', 'odd'],
  })
})
