import 'server-only'
import { sayName } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownResult } from './shown-result'

type LineOfDough = Pick<
  NonNullable<ShownResult['weighings']>['off'][number],
  'stage' | 'ingredient' | 'part' | 'isApart'
>

/** A line to weigh as the shift calls it, with the stage that it is of. */
export function lineOfDough({ stage, ingredient, part, isApart }: LineOfDough, language: Language): string {
  const { weighed } = wordsIn(language).shift
  return sayName(weighed.lineOf, language, {
    line: sayName(weighed.part[part === 'dose' && !isApart ? 'line' : part], language, { ingredient: ingredient.name }),
    stage: stage.name || weighed.stages[stage.kind],
  })
}
