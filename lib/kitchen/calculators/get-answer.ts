import 'server-only'
import { isDeepStrictEqual } from 'node:util'
import { z } from 'zod'
import { query } from '../query'
import { entryOrRefuse } from './entry-or-refuse'
import { workOutInPool } from './work-out-in-pool'

/**
 * A calculation's answer to what somebody gave, or what is wrong with that at which fields: a wrong question is
 * answered, not refused. Nothing is kept. Refuses: not-found.
 */
export const getAnswer = query({
  name: 'calculators.get-answer',
  input: z.strictObject({ id: z.string(), given: z.unknown() }),
  right: 'read-work',
  async run({ input: { id, given } }) {
    const { example } = entryOrRefuse(id)
    return { worked: await workOutInPool(id, given), isExample: isDeepStrictEqual(given, example) }
  },
})
