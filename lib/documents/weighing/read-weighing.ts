import 'server-only'
import { readerOfFormats } from '../reader-of'
import type { WeighingContent } from './text-of-weighing.input'
import { weighingOfFormat1 } from './weighing-of-format-1.input'
import { weighingOfFormat2 } from './weighing-of-format-2.input'
import { weighingOfFormat3 } from './weighing-of-format-3.input'

/** Reads the text of what was entered of a line. */
export const readWeighing = readerOfFormats<WeighingContent>({
  1: weighingOfFormat1,
  2: weighingOfFormat2,
  3: weighingOfFormat3,
})
