import { z } from 'zod'
import { line } from '../text.input'
import { draftReason, formulaContent } from './formula-content.input'

export const draftFormulaInput = z.strictObject({ name: line(120), reason: draftReason, ...formulaContent.shape })
