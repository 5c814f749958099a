import { z } from 'zod'
import { seenRevision } from '../text.input'
import { withTrialContent } from './trial-content.input'

export const changeDraftTrialInput = withTrialContent({ trialId: z.uuid(), seenRevision })
