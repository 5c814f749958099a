import 'server-only'
import { readerOf } from '../reader-of'
import { stepOfFormat1 } from './step-of-format-1.input'

/** Reads the text of a step. */
export const readStep = readerOf(stepOfFormat1, 1)
