import 'server-only'
import { z } from 'zod'
import { catalogue } from '../../calc/catalogue'
import type { CalcEntry } from '../../calc/entry'
import { query } from '../query'
import { namesInFields } from './names-in-fields'
import { fieldsOfSchema } from './shape-of-schema'

// The catalogue does not change while the app runs.
let calculations: readonly ReturnType<typeof listed>[] | undefined

/** Every public calculation, in the catalogue's order, with what it gives and all names in what it asks for and gives. */
export const listCalculations = query({
  name: 'calculators.list-calculations',
  input: z.strictObject({}),
  right: 'read-work',
  run: async () => ({ calculations: (calculations ??= (catalogue as readonly CalcEntry[]).map(listed)) }),
})

function listed({ id, input, output, source }: CalcEntry) {
  const gives = fieldsOfSchema(output, 'output')
  return {
    id,
    source,
    gives: gives.map(({ name }) => name),
    ...namesInFields([...fieldsOfSchema(input, 'input'), ...gives]),
  }
}
