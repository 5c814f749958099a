import 'server-only'
import { readerOf } from '../reader-of'
import { noteOfFormat1 } from './note-of-format-1.input'

/** Reads the text of a note. */
export const readNote = readerOf(noteOfFormat1, 1)
