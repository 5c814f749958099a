import 'server-only'
import { readerOf } from '../reader-of'
import { cautionsOfFormat1 } from './cautions-of-format-1'

/** Reads that part of evidence. */
export const readCautions = readerOf(cautionsOfFormat1, 1)
