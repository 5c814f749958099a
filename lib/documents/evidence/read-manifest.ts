import 'server-only'
import { readerOf } from '../reader-of'
import { evidenceOfFormat2 } from './evidence-of-format-2'

/** Reads what evidence of format 2 consists of. */
export const readManifest = readerOf(evidenceOfFormat2, 2)
