import 'server-only'
import { z } from 'zod'
import { catalogue } from '../../calc/catalogue'
import type { CalcEntry } from '../../calc/entry'
import { query } from '../query'
import { fieldsOfSchema, type FieldShape } from './shape-of-schema'

export type Described = { id: string; source: string; asks: readonly FieldShape[]; gives: readonly FieldShape[]; example: unknown; answer: unknown }

// The catalogue does not change while the app runs, and some examples take their time.
let described: readonly Described[] | undefined

/** Every public calculation whole: what it asks for and gives, its example with the answer, its source. */
export const getReference = query({
  name: 'calculators.get-reference',
  input: z.strictObject({}),
  right: 'read-work',
  run: async () => ({ calculations: (described ??= (catalogue as readonly CalcEntry[]).map(describe)) }),
})

function describe({ id, source, input, output, example, run }: CalcEntry): Described {
  return { id, source, asks: fieldsOfSchema(input, 'input'), gives: fieldsOfSchema(output, 'output'), example, answer: run(input.parse(example)) }
}
