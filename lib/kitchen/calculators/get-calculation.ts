import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { entryOrRefuse } from './entry-or-refuse'
import { fieldsOfSchema } from './shape-of-schema'

/** What a calculation asks for, and its worked example. Refuses: not-found. */
export const getCalculation = query({
  name: 'calculators.get-calculation',
  input: z.strictObject({ id: z.string() }),
  right: 'read-work',
  async run({ input }) {
    const { id, source, example, input: asked } = entryOrRefuse(input.id)
    return { id, source, asks: fieldsOfSchema(asked, 'input'), example }
  },
})
