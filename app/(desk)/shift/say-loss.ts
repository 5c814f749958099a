import 'server-only'
import type { LostDough } from '@/lib/kitchen/repairs/losses-of-trial'
import { formatDay } from '@/lib/words/format/day'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** That a batch is out and when it can be baked again. */
export function sayLoss(
  { code, state, when }: Pick<LostDough, 'code' | 'state' | 'when'>,
  locale: string,
  { repair: text }: Words['shift'],
  language: Language,
) {
  if (when === 'today') return say(text.today[state], language, { code })
  if (when === 'its-day') return say(text.itsDay[state], language, { code })
  return say(text.onDay[state], language, { code, date: formatDay(when.date, locale) })
}
