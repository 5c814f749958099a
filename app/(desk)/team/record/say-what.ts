import type { Words } from '@/lib/words/words'
import type { Who } from './say-who'

/** What an entry of the record says was done. An action that has no words (any more) is given as it stands there. */
export function sayWhat(action: string, who: Who, { audit }: Pick<Words, 'audit'>): string {
  if (action === 'refused.right' && who && who.kind !== 'desk') {
    const kind = who.kind === 'station' ? (who.person ? null : 'stationAlone') : who.kind
    if (kind !== null) return audit.refusedRight[kind]
  }
  return Object.entries(audit.actions).find(([code]) => code === action)?.[1] ?? action
}
