import 'server-only'
import type { LostDough } from '@/lib/kitchen/repairs/losses-of-trial'
import { formatDay } from '@/lib/words/format/day'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** That a batch is out and when it can be baked again. */
export function sayLoss(
  { code, state, on }: Pick<LostDough, 'code' | 'state' | 'on'>,
  locale: string,
  { repair: text }: Words['shift'],
  language: Language,
) {
  return on === null
    ? say(text.today[state], language, { code })
    : say(text.onDay[state], language, { code, date: formatDay(on, locale) })
}
