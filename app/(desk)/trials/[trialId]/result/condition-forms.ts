import 'server-only'
import { massInUnit, smallMassUnit } from '@/lib/words/format/mass'
import { degreeSign, differenceInUnit } from '@/lib/words/format/temperature-difference'
import { temperatureInUnit } from '@/lib/words/format/temperature'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownComparison } from './shown-result'

type Code = ShownComparison['conditions'][number]['code']

/** How a condition is written: its unit, a mean, a difference without its sign. */
export function conditionForms(
  code: Code,
  bakery: ShownBakery,
  forms: ResultForms,
): { unit: string; mean(value: number): string; amount(value: number): string } {
  const { massUnits, temperatureUnits } = bakery
  switch (code) {
    case 'dough-temp': {
      const unit = degreeSign[temperatureUnits]
      return {
        unit,
        mean: (value) => forms.number(temperatureInUnit(value, temperatureUnits), 1),
        amount: (value) => withUnit(forms.number(differenceInUnit(Math.abs(value), temperatureUnits), 1), unit),
      }
    }
    case 'proof-time': {
      const unit = forms.text.minutes
      const minutes = (value: number) => forms.number(value / 60, 0)
      return { unit, mean: minutes, amount: (value) => withUnit(minutes(Math.abs(value)), unit) }
    }
    case 'water-added': {
      const unit = smallMassUnit(massUnits)
      const mass = (value: number) => forms.number(massInUnit(value, unit), unit === 'g' ? 0 : 1)
      return { unit, mean: mass, amount: (value) => withUnit(mass(Math.abs(value)), unit) }
    }
    default:
      return code satisfies never
  }
}

/** A sentence for each arm that differed notably from the control in something else. */
export function conditionWarnings(
  comparison: Pick<ShownComparison, 'conditions'>,
  bakery: ShownBakery,
  forms: ResultForms,
): { key: string; sentence: string }[] {
  return comparison.conditions.flatMap(({ code, arms }) => {
    const { amount } = conditionForms(code, bakery, forms)
    return arms.flatMap(({ arm, difference, isNotable }) => {
      if (!isNotable || difference === null) return []
      const words = forms.text.warnings[code]
      const sentence = say(difference > 0 ? words.more : words.less, forms.language, {
        dough: forms.dough(arm),
        amount: amount(difference),
      })
      return [{ key: `${code} ${arm}`, sentence }]
    })
  })
}
