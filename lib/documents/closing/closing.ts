import 'server-only'
import type { ClosingOfFormat2 } from './closing-of-format-2'

/** What a trial's readings were when they were closed, whatever the format of its text. */
export type Closing = Omit<ClosingOfFormat2, 'format' | 'weighings'> & {
  /** Null where it was closed before weighings were written down. */
  weighings: ClosingOfFormat2['weighings'] | null
}
