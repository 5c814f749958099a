import 'server-only'
import type { EntryOfFormat1 } from './entry-of-format-1'
import type { EntryOfFormat2 } from './entry-of-format-2'

/** Fills in what an entry of format 1 leaves unsaid: whoever was let in sat at the desk. */
export function asFormat2(entry: EntryOfFormat1): EntryOfFormat2 {
  return { ...entry, format: 2, who: entry.who && { kind: 'desk', ...entry.who } }
}
