import 'server-only'
import { unitPrice } from '@/lib/ui/unit-price'
import { largeMassUnit } from '@/lib/words/format/mass'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownCosts } from './shown-result'

type ShownCost = ShownCosts['arms'][number]
type SameVolume = NonNullable<ShownCost['sameVolume']>
type WorkedOut = Extract<SameVolume, { outcome: 'worked-out' }>

/**
 * At which price of what a dough doses a litre of it costs as much as one of the control, in words: from one end of the
 * interval of its volume to the other; null for the control.
 */
export function saySameVolume(
  { arm, sameVolume }: Pick<ShownCost, 'arm' | 'sameVolume'>,
  { currency, bakery, forms }: { currency: string; bakery: ShownBakery; forms: ResultForms },
): string | null {
  if (!sameVolume) return null
  const { language } = forms
  const { sameVolume: text } = forms.text
  const dough = forms.dough(arm)
  switch (sameVolume.outcome) {
    case 'several-doses':
      return say(text.several, language, { dough })
    case 'not-measured':
      return say(text.notMeasured, language, { dough })
    case 'not-costed':
      return say(text.notCosted, language, { dough })
    case 'worked-out': {
      const price = (perKg: string) => unitPrice(perKg, { ...bakery, currency })
      const unit = largeMassUnit(bakery.massUnits)
      return paragraph([sayPrice(sameVolume, { dough, unit, price, forms }), sayVolume(sameVolume, forms)], language)
    }
    default:
      return sameVolume satisfies never
  }
}

type Said = { dough: string; unit: string; price(perKg: string): string; forms: ResultForms }

function sayPrice({ ingredient, volume, at, low, high }: WorkedOut, { dough, unit, price, forms }: Said): string {
  const { language } = forms
  const { sameVolume: text } = forms.text
  const facts = { dough, ingredient }
  const ends = low && high ? [low, high] : [at]
  const has = (outcome: WorkedOut['at']['outcome']) => ends.some((end) => end.outcome === outcome)
  const only = (...outcomes: WorkedOut['at']['outcome'][]) => ends.every(({ outcome }) => outcomes.includes(outcome))
  const prices = ends.flatMap(({ perKg }) => perKg ?? []).sort((a, b) => Number(a) - Number(b))
  const [least = '0', most = least] = prices
  const isRange = prices.length > 1
  if (only('never')) return say(text.never, language, facts)
  if (only('always')) return say(text.always, language, facts)
  if (only('no-bearing')) return say(text.noBearing, language, facts)
  if (only('up-to', 'never')) {
    const isUnsure = has('never') || (volume.low !== null && volume.low <= 1)
    if (isUnsure) return say(text.upToUnsure, language, { ...facts, high: price(most), unit })
    return isRange
      ? say(text.upToRange, language, { ...facts, low: price(least), high: price(most), unit })
      : say(text.upTo, language, { ...facts, price: price(least), unit })
  }
  if (only('from'))
    return isRange
      ? say(text.fromRange, language, { ...facts, low: price(least), high: price(most), unit })
      : say(text.from, language, { ...facts, price: price(least), unit })
  if (only('from', 'always')) return say(text.fromUnsure, language, { ...facts, price: price(most), unit })
  return say(text.unclear, language, facts)
}

function sayVolume({ volume: { ratio, low, high } }: WorkedOut, { language, text, pct }: ResultForms): string {
  const asPct = (of: number) => pct(100 * (of - 1))
  return low === null || high === null
    ? say(text.sameVolume.volumeOnly, language, { pct: asPct(ratio) })
    : say(text.sameVolume.volumeRange, language, { low: asPct(low), high: asPct(high) })
}
