import 'server-only'
import { z } from 'zod'
import { catalogue } from '../../calc/catalogue'
import type { CalcEntry } from '../../calc/entry'
import { query } from '../query'
import { fieldsOfSchema } from './shape-of-schema'

// The catalogue does not change while the app runs.
let calculations: readonly ReturnType<typeof listed>[] | undefined

/** Every public calculation, in the catalogue's order, with the names of what it asks for and what it gives. */
export const listCalculations = query({
  name: 'calculators.list-calculations',
  input: z.strictObject({}),
  right: 'read-work',
  run: async () => ({ calculations: (calculations ??= (catalogue as readonly CalcEntry[]).map(listed)) }),
})

function listed({ id, input, output, source }: CalcEntry) {
  const names = (schema: z.ZodType, io: 'input' | 'output') => fieldsOfSchema(schema, io).map(({ name }) => name)
  return { id, source, asks: names(input, 'input'), gives: names(output, 'output') }
}
