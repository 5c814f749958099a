import type { PlanDose } from '@/lib/kitchen/trials/plan-types'
import { plainNumber } from '@/lib/words/format/plain-number'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { PlanFormat } from './plan-format'

type DoseWordsOptions = { text: Words['trials']; format: PlanFormat; language: Language; locale: string }

/** A dose as it was asked for, and what that comes to: in all, and against the control. Plan and sheets say it alike. */
export function doseWords(dose: PlanDose, { text, format, language, locale }: DoseWordsOptions): { asked: string; comesTo: string } {
  const { plan } = text
  const which = dose.allOfIt ? 'in_place_all' : dose.how === 'more' && dose.value < 0 ? 'less' : dose.how === 'in_all' && dose.value === 0 ? 'without' : dose.how
  const asked = say(plan.doseTexts[which], language, {
    ingredient: dose.ingredient,
    value: plainNumber(Math.abs(dose.value), { locale }),
    basis: text.baseUnits[dose.basis],
    of: text.doseOf[dose.doseOf],
    other: dose.insteadOf ?? '',
    equal: dose.equalBy === null ? '' : plan.doseEqual[dose.equalBy],
  })
  const moreG = dose.inAllG - dose.controlG
  const change = moreG === 0 ? plan.doseSame : say(moreG > 0 ? plan.doseMore : plan.doseLess, language, { mass: format.mass(Math.abs(moreG)) })
  const inAll = format.mass(dose.inAllG)
  const sum = dose.controlG === 0 ? say(plan.doseNew, language, { inAll }) : say(plan.doseInAll, language, { inAll, change, control: format.mass(dose.controlG) })
  const out = dose.removedG > 0 ? [say(plan.doseOut, language, { mass: format.mass(dose.removedG), other: dose.insteadOf ?? '' })] : []
  return { asked, comesTo: [sum, ...out].join('; ') }
}
