import 'server-only'
import { sayLoss } from '@/app/(desk)/shift/say-loss'
import type { AnswerOf } from '@/lib/kitchen/query'
import type { getFloor } from '@/lib/kitchen/stations/get-floor'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'

type Out = AnswerOf<typeof getFloor>['out'][number]

/** A dough that is out as a tablet keeps it: what became of it and what can be done, or why nothing can, as the desk says it. */
export function sayOut(dough: Out, locale: string, language: Language) {
  const { shift } = wordsIn(language)
  const { repair: text } = shift
  const { id, code, trialNumber, formulaName, dayNumber, state, again, whyNot, addedAs } = dough
  const told = { id, code, trialNumber, formulaName, dayNumber, state: shift.states[state], again }
  if (again !== null) return { ...told, said: say(text.again, language, { code: again }), go: null, note: null }
  if (whyNot === null)
    return { ...told, said: sayLoss(dough, locale, shift, language), go: text.go[state], note: text.note }
  return {
    ...told,
    said: addedAs === null ? text.dayOver : say(text.dayAdded, language, { day: addedAs }),
    go: null,
    note: null,
  }
}
