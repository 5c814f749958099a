import 'server-only'
import { readerOf } from '../reader-of'
import { shownOfFormat1 } from './shown-of-format-1'

/** Reads that part of evidence. */
export const readShown = readerOf(shownOfFormat1, 1)
