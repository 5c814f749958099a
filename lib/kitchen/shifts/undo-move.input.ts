import { z } from 'zod'
import { seenRevision } from '../text.input'

export const undoMoveInput = z.strictObject({ batchId: z.uuid(), seenRevision })
