import { line } from '../text.input'
import { mostCode } from './code-on-label.input'

/** The code of a lot, as it stands on the label. */
export const lotCode = line(mostCode)
