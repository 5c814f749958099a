import 'server-only'
import type { Gap } from '@/lib/kitchen/readings/gaps-of-batch'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { sayPlace } from './say-place'
import { amountInUnits } from './shift/[batchId]/amount-in-units'
import type { BakeryShown } from './shift/[batchId]/batch-view'

/** What is still so with a batch, in one line, on the batch's own page. */
export function sayGap(gap: Gap, bakery: BakeryShown, words: Words, language: Language): string {
  const text = words.shift.gaps
  switch (gap.kind) {
    case 'fewer-pieces':
      return say(text['fewer-pieces'], language, gap)
    case 'missing':
      return say(text.missing, language, { ...gap, name: measureName(gap.measure, words) })
    case 'unsettled':
      return say(text.unsettled, language, sayPlace(gap, words, language))
    case 'outside':
      return say(text.outside, language, { ...sayPlace(gap, words, language), ...figuresOf(gap, bakery) })
    case 'to-settle':
      return say(text['to-settle'], language, { count: gap.count })
    default:
      return gap satisfies never
  }
}

/** The same with the code of its dough, where those of a trial stand together: where it is closed, and beside the result. */
export function sayGapOf(code: string, gap: Gap, bakery: BakeryShown, words: Words, language: Language): string {
  const text = words.results.gaps
  switch (gap.kind) {
    case 'fewer-pieces':
      return say(text['fewer-pieces'], language, { ...gap, code })
    case 'missing':
      return say(text.missing, language, { ...gap, code, name: measureName(gap.measure, words) })
    case 'unsettled':
      return say(text.unsettled, language, { code, ...sayPlace(gap, words, language) })
    case 'outside':
      return say(text.outside, language, { code, ...sayPlace(gap, words, language), ...figuresOf(gap, bakery) })
    case 'to-settle':
      return say(text['to-settle'], language, { code, count: gap.count })
    default:
      return gap satisfies never
  }
}

function figuresOf(
  { measure: { unit, digits }, value, least, most }: Extract<Gap, { kind: 'outside' }>,
  bakery: BakeryShown,
): { value: string; least: string; most: string } {
  const shown = (amount: number) => amountInUnits(amount, unit, digits, bakery)
  return { value: shown(value), least: shown(least), most: shown(most) }
}
