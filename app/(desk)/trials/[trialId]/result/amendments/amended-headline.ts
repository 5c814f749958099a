import 'server-only'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import { resultForms } from '../result-forms'
import { headlineOf } from '../say-result'
import type { ShownBakery, ShownResult } from '../shown-result'
import type { ShownAmendments } from './shown-amendments'

/** The headline where owner and head baker signed that the first result rested on a slip; null where they have not. */
export function amendedHeadline(
  amended: ShownAmendments | null,
  result: ShownResult,
  bakery: ShownBakery,
  language: Language,
): { headline: string; lead: string | null } | null {
  if (!amended?.slip?.isSigned || !amended.second || amended.fault) return null
  const { amendments: text } = wordsIn(language)
  const second = { ...result, analysis: amended.second, headline: amended.second.headline }
  const forms = resultForms({ result: second, measureCode: result.trial.measure.code, bakery, language })
  const { headline, lead } = headlineOf(second, null, forms)
  const sentence = amended.slip.isAlone || amended.nobodyElse ? text.slipHeadlineAlone : text.slipHeadline
  return { headline: say(sentence, language, { headline }), lead }
}
