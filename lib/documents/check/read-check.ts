import 'server-only'
import type { CheckContent } from './text-of-check.input'
import { readerOfFormats } from '../reader-of'
import { checkOfFormat1 } from './check-of-format-1.input'
import { checkOfFormat2 } from './check-of-format-2.input'

/** Reads the text of a check. */
export const readCheck = readerOfFormats<CheckContent>({ 1: checkOfFormat1, 2: checkOfFormat2 })
