import 'server-only'
import { formatDate, formatDateTime, type DateForm } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { sayNeeds } from '../../formulas/say-needs'
import { sayDecision } from '../say-decision'
import type { DecisionSeen, VersionSeen } from './decision-seen'

type MissingSignatures = NonNullable<VersionSeen['signing']>['missing']

/** The decision in one sentence, with where it stands: of one that waits, whose signatures are `missing`. */
export function headlineOf(decision: DecisionSeen, missing: MissingSignatures, words: Words, bakery: DateForm, language: Language): string {
  const { decisions: text, formulas } = words
  const { version, arm, formula, trial, state } = decision
  const what = sayDecision({ arm: arm?.name ?? null, versionNumber: version?.number ?? null, formula: formula.name, trialNumber: trial.number }, text, language)
  switch (state) {
    case 'waiting':
      return say(text.headlines.waiting, language, { what, names: sayNeeds(missing, formulas, language) })
    case 'signed': {
      const at = version?.effectiveAt
      if (!at) return what
      if (decision.isComing) return say(text.headlines.coming, language, { what, at: formatDateTime(at, bakery) })
      const words = decision.inProduction?.id === version.id ? text.headlines.signed : text.headlines.held
      return say(words, language, { what, at: formatDate(at, bakery) })
    }
    case 'kept':
      return say(text.headlines.kept, language, { what })
    case 'taken-back':
      return say(text.headlines['taken-back'], language, { what })
    default:
      return state satisfies never
  }
}
