import { z } from 'zod'
import { line, seenRevision } from '../text.input'
import { role } from './roles.input'

export const changePersonInput = z.strictObject({
  personId: z.uuid(),
  seenRevision,
  name: line(80),
  role,
  works: z.boolean(),
})
