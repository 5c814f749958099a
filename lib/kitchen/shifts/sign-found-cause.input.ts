import { z } from 'zod'
import { seenRevision } from '../text.input'

/** Which cause, and the batch as it was seen. */
export const signFoundCauseInput = z.strictObject({ foundCauseId: z.uuid(), seenRevision })
