import { z } from 'zod'
import { draftReason } from './formula-content.input'

export const draftVersionInput = z.strictObject({ fromVersionId: z.uuid(), reason: draftReason })
