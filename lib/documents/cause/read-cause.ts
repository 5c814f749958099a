import 'server-only'
import { readerOf } from '../reader-of'
import { causeOfFormat1 } from './cause-of-format-1.input'

/** Reads the text of what happened to a dough. */
export const readCause = readerOf(causeOfFormat1, 1)
