import { z } from 'zod'
import { seenRevision } from '../text.input'

export const discardDraftInput = z.strictObject({ versionId: z.uuid(), seenRevision })
