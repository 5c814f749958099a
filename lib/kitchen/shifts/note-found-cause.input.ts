import { z } from 'zod'
import { foundObject } from '../conduct/found-object.input'
import { line } from '../text.input'

/** What was found later, and by what. */
export const noteFoundCauseInput = z.strictObject({ batchId: z.uuid(), object: foundObject, what: line(300) })
