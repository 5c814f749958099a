import 'server-only'
import { formatDate, formatDateTime, type DateForm } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { neededKey } from '@/lib/words/needed-key'
import type { DecisionSeen, VersionSeen } from './decision-seen'

type MissingSignatures = NonNullable<VersionSeen['signing']>['missing']

/** The decision in one sentence, with where it stands: of one that waits, whose signatures are `missing`. */
export function headlineOf(
  decision: DecisionSeen,
  missing: MissingSignatures,
  words: Words,
  bakery: DateForm,
  language: Language,
): string {
  const { headlines, keep, change } = words.decisions
  const { version, arm, formula, trial, state } = decision
  if (!version || !arm)
    return say(state === 'taken-back' ? headlines.keepTakenBack : keep, language, {
      formula: formula.name,
      trial: trial.number,
    })
  const facts = { formula: formula.name, arm: arm.name, number: version.number }
  switch (state) {
    case 'waiting': {
      const needed = neededKey(missing)
      return say(needed ? headlines.waiting[needed] : change, language, facts)
    }
    case 'signed': {
      const at = version.effectiveAt
      if (!at) return say(change, language, facts)
      if (decision.isComing) return say(headlines.coming, language, { ...facts, at: formatDateTime(at, bakery) })
      return say(decision.inProduction?.id === version.id ? headlines.signed : headlines.held, language, {
        ...facts,
        at: formatDate(at, bakery),
      })
    }
    case 'kept':
      return say(change, language, facts)
    case 'taken-back':
      return say(headlines.changeTakenBack, language, facts)
    default:
      return state satisfies never
  }
}
