import type { Plan } from '@/lib/kitchen/trials/plan-types'
import { say, sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Chosen = Pick<Plan, 'choices'> & { scales: readonly { id: string; name: string }[] }

/** What was chosen for lines beside the rules, a sentence each. Plan and sheets say it alike. */
export function choiceWords({ choices, scales }: Chosen, text: Words['trials'], language: Language): string[] {
  return choices.flatMap(({ ingredient, stageKind, mayMove, scaleId }) => {
    const named = {
      ingredient:
        stageKind === 'final_dough'
          ? ingredient
          : sayName(text.plan.linesOf, language, { ingredient, stage: text.stages[stageKind] }),
    }
    const scale = scales.find(({ id }) => id === scaleId)?.name
    return [
      ...(mayMove === null ? [] : [say(mayMove ? text.plan.chosenMoves : text.plan.chosenStays, language, named)]),
      ...(scale === undefined ? [] : [say(text.plan.chosenScale, language, { ...named, scale })]),
    ]
  })
}
