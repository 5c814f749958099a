import 'server-only'
import { readerOf } from '../reader-of'
import { costsOfFormat1 } from './costs-of-format-1'

/** Reads that part of evidence. */
export const readCosts = readerOf(costsOfFormat1, 1)
