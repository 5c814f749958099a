import 'server-only'
import type { getWeighList } from '@/lib/kitchen/stations/get-weigh-list'
import type { AnswerOf } from '@/lib/kitchen/query'
import { smallMassUnit } from '@/lib/words/format/mass'
import { planFormat } from '@/lib/words/format/plan-format'
import { say, sayName } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'

type List = AnswerOf<typeof getWeighList>
type Premix = List['premixes'][number]

/** A weigh list as a tablet keeps it: lines, stages and premixes called as on the sheet, and in which unit is weighed. */
export function weighListInWords({ bakery, lines, premixes, ...list }: List, language: Language) {
  const { shift, mixing } = wordsIn(language)
  const text = shift.weighed
  const unit = smallMassUnit(bakery.massUnits)
  const format = planFormat(bakery)
  const mass = ({ massG, resolutionG, scale }: Premix['portion']) => {
    const written = format.weighedInUnit(massG, resolutionG)
    return scale ? sayName(mixing.premix.onScale, language, { mass: written, scale: scale.name }) : written
  }
  return {
    ...list,
    unit,
    lines: lines.map(({ stage, ingredient, part, isApart, stands, ...line }) => ({
      ...line,
      stageId: stage.id,
      stage: stage.name || text.stages[stage.kind],
      ingredientId: ingredient.id,
      part,
      name: sayName(text.part[part === 'dose' && !isApart ? 'line' : part], language, { ingredient: ingredient.name }),
      stands: stands && {
        id: stands.id,
        who: stands.who,
        personId: stands.personId,
        at: stands.at.toISOString(),
        how: stands.as?.how,
        massG: stands.as?.massG,
        lots: stands.as?.lots,
      },
      /** Step by step, where it is a premix that is to be made first. */
      howTo:
        part === 'premix' ? premixes.flatMap((each) => (each.ingredient === ingredient.name ? stepsOf(each) : [])) : [],
    })),
  }

  function stepsOf(premix: Premix): string[] {
    const { ingredient, carrier: flour, steps, portion, carrierLessG, doughs } = premix
    const { first, further, portion: take, doughs: enough, dust } = mixing.premix
    return [
      dust,
      ...steps.map((step, at) =>
        say(at === 0 ? first : further, language, {
          take: mass(step.take),
          carrier: mass(step.carrier),
          ingredient,
          flour,
        }),
      ),
      say(take, language, { portion: mass(portion), ingredient, flour, less: format.mass(carrierLessG) }),
      say(enough, language, { count: doughs }),
    ]
  }
}
