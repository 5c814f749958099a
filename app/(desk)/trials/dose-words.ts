import type { PlanDose } from '@/lib/kitchen/trials/plan-types'
import { plainNumber } from '@/lib/words/format/plain-number'
import { paragraph } from '@/lib/words/paragraph'
import { say, sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { PlanFormat } from '@/lib/words/format/plan-format'

type DoseWordsOptions = { text: Words['trials']; format: PlanFormat; language: Language; locale: string }

/** A dose as it was asked for, and what that comes to: in all, and against the control. Plan and sheets say it alike. */
export function doseWords(
  dose: PlanDose,
  { text, format, language, locale }: DoseWordsOptions,
): { asked: string; comesTo: string } {
  const { plan } = text
  const inAll = format.mass(dose.inAllG)
  const moreG = dose.inAllG - dose.controlG
  const against = { inAll, mass: format.mass(Math.abs(moreG)), control: format.mass(dose.controlG) }
  const sum =
    dose.controlG === 0
      ? say(plan.doseNew, language, { inAll })
      : moreG === 0
        ? say(plan.doseInAllSame, language, against)
        : say(moreG > 0 ? plan.doseInAllMore : plan.doseInAllLess, language, against)
  const out =
    dose.removedG > 0
      ? say(plan.doseOut, language, { mass: format.mass(dose.removedG), other: dose.insteadOf ?? '' })
      : null
  return { asked: asked(), comesTo: paragraph([sum, out], language) }

  function asked(): string {
    const { doseTexts } = plan
    const { ingredient } = dose
    const value = sayName(text.doseValues[dose.basis], language, {
      value: plainNumber(Math.abs(dose.value), { locale }),
    })
    const replacing = { ingredient, dose: value, other: dose.insteadOf ?? '' }
    if (dose.allOfIt) return say(doseTexts.in_place_all[dose.equalBy ?? 'mass'], language, replacing)
    switch (dose.how) {
      case 'in_place':
        return say(doseTexts.in_place[dose.equalBy ?? 'mass'], language, replacing)
      case 'more':
        return say(doseTexts[dose.value < 0 ? 'less' : 'more'][dose.doseOf], language, { ingredient, dose: value })
      case 'in_all':
        return dose.value === 0
          ? say(doseTexts.without, language, { ingredient })
          : say(doseTexts.in_all[dose.doseOf], language, { ingredient, dose: value })
      default:
        return dose.how satisfies never
    }
  }
}
