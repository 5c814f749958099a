import { z } from 'zod'
import { seenRevision } from '../text.input'
import { draftReason, formulaContent } from './formula-content.input'

export const changeDraftInput = z.strictObject({
  versionId: z.uuid(),
  seenRevision,
  reason: draftReason,
  ...formulaContent.shape,
})
