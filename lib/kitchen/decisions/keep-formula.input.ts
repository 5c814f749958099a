import { z } from 'zod'
import { decidedTrial } from './decision.input'

export const keepFormulaInput = z.strictObject(decidedTrial)
