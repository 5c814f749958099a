import 'server-only'
import { plainNumber } from '../../words/format/plain-number'
import { fill } from '../../words/say'
import type { Fact } from '../../words/text'
import { wordsIn, type Language } from '../../words/words'
import type { Fault } from './fault-of-calc-error'

/** What is wrong, as a person reads it: by the calculation's own reason where that has words, else by its code. */
export function wordsOfFault({ code, facts, reason }: Fault, q: { language: Language; locale: string }): string {
  const { problems, calculators } = wordsIn(q.language)
  const reasons: Readonly<Record<string, string | undefined>> = calculators.reasons
  const shown = Object.fromEntries<Fact>(
    Object.entries(facts).map(([name, fact]) => [
      name,
      typeof fact === 'number' && Number.isFinite(fact)
        ? plainNumber(fact, { locale: q.locale, significant: 12 })
        : fact,
    ]),
  )
  const ofReason = reason !== undefined && Object.hasOwn(reasons, reason) ? reasons[reason] : undefined
  return fill(ofReason ?? problems[code], q.language, shown)
}
