import 'server-only'
import { readerOf } from '../reader-of'
import { checkOfFormat1 } from './check-of-format-1.input'

/** Reads the text of a check. */
export const readCheck = readerOf(checkOfFormat1, 1)
