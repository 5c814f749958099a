import type { Phase } from '@/lib/kitchen/steps/course-of-dough.input'
import type { DateForm } from '@/lib/words/format/date'
import { momentNear } from '@/lib/words/format/moment-near'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** What runs for a dough and until when, or since when its time is up: 'Bulk: until 06:30'. */
export function sayRuns(
  { phase, until }: { phase: Phase; until: Date },
  bakery: DateForm,
  words: Words,
  language: Language,
): string {
  const now = new Date()
  const facts = { phase: words.stationSteps.timers.phases[phase], at: momentNear(until, now, bakery) }
  return say(until > now ? words.steps.runs : words.steps.over, language, facts)
}
