import 'server-only'
import { readerOf, type DocumentRead } from '../reader-of'
import { shownOfFormat1 } from './shown-of-format-1'
import { shownOfFormat2 } from './shown-of-format-2'
import { shownOfFormat3, type ShownOfFormat3 } from './shown-of-format-3'

/** What a result showed, whatever the format that it was kept in. */
export type Shown = Omit<ShownOfFormat3, 'format' | 'headline'> & {
  /** Null where it was kept before it said what the headline rested on. */
  headline: ShownOfFormat3['headline'] | null
}

const readFormat1 = readerOf(shownOfFormat1, 1)
const readFormat2 = readerOf(shownOfFormat2, 2)
const readFormat3 = readerOf(shownOfFormat3, 3)

/**
 * Reads that part of evidence. In format 1 every verdict was said of any day, and before weighings were written down nothing
 * was found going by them; in formats 1 and 2 nothing is said of the headline.
 */
export function readShown(text: string, hash: string): DocumentRead<Shown> {
  const read = readFormat3(text, hash)
  if (read.outcome !== 'unknown-format') return valueOf(read, ({ format: _, ...value }) => value)
  switch (read.format) {
    case 1:
      return valueOf(readFormat1(text, hash), ({ format: _, ...value }) => ({
        ...value,
        declared: { ...value.declared, holdsFor: 'any_day' },
        asLastWeighed: null,
        headline: null,
      }))
    case 2:
      return valueOf(readFormat2(text, hash), ({ format: _, ...value }) => ({ ...value, headline: null }))
    default:
      return read
  }
}

function valueOf<Kept>(read: DocumentRead<Kept>, shown: (kept: Kept) => Shown): DocumentRead<Shown> {
  return read.outcome === 'read' ? { ...read, value: shown(read.value) } : read
}
