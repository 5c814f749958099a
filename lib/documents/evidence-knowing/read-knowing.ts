import 'server-only'
import { readerOf } from '../reader-of'
import { knowingOfFormat1 } from './knowing-of-format-1'

/** Reads that part of evidence. */
export const readKnowing = readerOf(knowingOfFormat1, 1)
