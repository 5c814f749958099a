import type { ShownCostChange } from '@/lib/kitchen/formulas/shown-cost-change'
import { formatLoafMoney } from '@/lib/words/format/loaf-money'
import { formatNumber } from '@/lib/words/format/number'
import { plainNumber } from '@/lib/words/format/plain-number'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** The amounts of a change of cost as they are written; null where they are not known. */
export function costChangeForms(cost: ShownCostChange, locale: string) {
  const { currency } = cost
  const money = (amount: string | null) =>
    amount === null || currency === null ? null : formatLoafMoney(amount, { locale, currency })
  const difference = money(cost.difference)
  return {
    before: money(cost.before),
    after: money(cost.after),
    difference: difference !== null && Number(cost.difference) > 0 ? `+${difference}` : difference,
    differencePct:
      cost.differencePct === null
        ? null
        : withUnit(formatNumber(cost.differencePct, { locale, digits: 1, signed: true }), '%'),
    limit: withUnit(plainNumber(cost.limitPct, { locale }), '%'),
  }
}

/** A change of cost in one line: '€0.545 instead of €0.532: +€0.013, +2.4 %; beyond the 1 % from which the owner signs'. */
export function costChangeWords(
  cost: ShownCostChange,
  { formulas: { sign } }: Words,
  { locale }: { locale: string },
  language: Language,
): string {
  const { before, after, difference, differencePct, limit } = costChangeForms(cost, locale)
  if (before === null || after === null || difference === null || differencePct === null) {
    return cost.unpriced.length > 0 ? say(sign.costUnpriced, language, { names: cost.unpriced }) : sign.costMixed
  }
  if (Number(cost.difference) === 0) return say(sign.costSame, language, { after })
  return say(cost.isBeyondLimit ? sign.costBeyond : sign.costWithin, language, {
    before,
    after,
    difference,
    pct: differencePct,
    limit,
  })
}
