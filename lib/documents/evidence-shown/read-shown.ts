import 'server-only'
import { readerOf, type DocumentRead } from '../reader-of'
import { shownOfFormat1 } from './shown-of-format-1'
import { shownOfFormat2, type ShownOfFormat2 } from './shown-of-format-2'

/** What a result showed, whatever the format that it was kept in. */
export type Shown = Omit<ShownOfFormat2, 'format'>

const readFormat1 = readerOf(shownOfFormat1, 1)
const readFormat2 = readerOf(shownOfFormat2, 2)

/** Reads that part of evidence. In format 1 every verdict was said of any day. Before weighings were written down nothing was found going by them. */
export function readShown(text: string, hash: string): DocumentRead<Shown> {
  const read = readFormat2(text, hash)
  if (read.outcome === 'read') {
    const { format: _, ...value } = read.value
    return { ...read, value }
  }
  if (read.outcome === 'damaged' || read.format !== 1) return read
  const former = readFormat1(text, hash)
  if (former.outcome !== 'read') return former
  const { format: _, ...value } = former.value
  return { ...former, value: { ...value, declared: { ...value.declared, holdsFor: 'any_day' }, asLastWeighed: null } }
}
