import 'server-only'
import type { ClosingOfFormat1 } from './closing-of-format-1'
import type { Closing } from './closing'

/** A closing from when every verdict was said of any day, nothing of weighing was written down, and nothing could be made good. */
export function asFormat2({ format: _, ...closing }: ClosingOfFormat1): Closing {
  return { ...closing, declared: { ...closing.declared, holdsFor: 'any_day' }, weighings: null, found: [], repairs: [] }
}
