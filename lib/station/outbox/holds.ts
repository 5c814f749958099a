import type { OutboxEntry } from './entry'

/** The book's refusal of a correction until whoever made it types their PIN. */
export const pinWanted = 'correction-wants-pin'

/** Whether an entry stands on this tablet: all but what the book refused, of which the PIN alone is missing in some. */
export function holds({ state, refusal }: Pick<OutboxEntry, 'state' | 'refusal'>): boolean {
  return state !== 'attention' || refusal === pinWanted
}
