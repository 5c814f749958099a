import 'server-only'
import { screenDigits, toScreen } from '@/lib/kitchen/calculators/on-screen'
import { answerNumber } from '@/lib/words/format/answer-number'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import type { Sayer } from '../../sayer'

/** The one number of an answer as a headline; undefined when there are several, or lists. */
export function headlineOf(answer: unknown, { own, text, locale, language }: Sayer): string | undefined {
  if (typeof answer !== 'object' || answer === null || Array.isArray(answer)) return undefined
  const entries = Object.entries(answer as Record<string, unknown>).filter(
    ([name]) => name !== 'warnings' && name !== 'cautions',
  )
  const [only, ...more] = entries.flatMap(([name, value]) => (typeof value === 'number' ? [{ name, value }] : []))
  if (!only || more.length > 0 || entries.some(([, value]) => typeof value === 'object' && value !== null))
    return undefined
  const unit = own.screenUnit(only.name)
  const number = answerNumber(toScreen(only.name, only.value), { locale, ...screenDigits(only.name) })
  return say(text.headlineAnswer, language, {
    name: own.field(only.name),
    value: unit ? withUnit(number, unit) : number,
  })
}
