import 'server-only'
import { readerOf } from '../reader-of'
import { countOfFormat1 } from './count-of-format-1.input'

/** Reads the text of a count of pieces. */
export const readCount = readerOf(countOfFormat1, 1)
