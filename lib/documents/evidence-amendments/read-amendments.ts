import 'server-only'
import { readerOf } from '../reader-of'
import { amendmentsOfFormat1 } from './amendments-of-format-1'

/** Reads that part of evidence. */
export const readAmendments = readerOf(amendmentsOfFormat1, 1)
