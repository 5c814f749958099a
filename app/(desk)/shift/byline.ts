import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** A device may have been without a network for hours, or have a clock of its own. */
const apartMs = 10 * 60_000

/** Who made something and when; where the two are apart, also when it came in. */
export function byline(
  { who, takenAt, receivedAt }: { who: string; takenAt: Date; receivedAt: Date },
  bakery: { locale: string; timeZone: string },
  text: Pick<Words['notes'], 'by' | 'byLate'>,
  language: Language,
) {
  const at = formatDateTime(receivedAt, bakery)
  return Math.abs(receivedAt.getTime() - takenAt.getTime()) <= apartMs
    ? say(text.by, language, { who, at })
    : say(text.byLate, language, { who, at, taken: formatDateTime(takenAt, bakery) })
}
