import 'server-only'
import type { Closing } from './closing'
import type { ClosingOfFormat1 } from './closing-of-format-1'

/** A closing from when every verdict was said of any day. */
export function asFormat2({ format: _, ...closing }: ClosingOfFormat1): Closing {
  return { ...closing, declared: { ...closing.declared, holdsFor: 'any_day' } }
}
