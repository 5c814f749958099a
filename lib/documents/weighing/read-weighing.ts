import 'server-only'
import { readerOf } from '../reader-of'
import { weighingOfFormat1 } from './weighing-of-format-1.input'

/** Reads the text of what was entered of a line. */
export const readWeighing = readerOf(weighingOfFormat1, 1)
