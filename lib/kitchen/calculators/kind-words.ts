import 'server-only'
import { say } from '../../words/say'
import { wordsIn, type Language } from '../../words/words'
import type { FieldShape, Shape } from './shape-of-schema'

/** What a field takes or gives, as short remarks: 'list of numbers', 'may be left out'. */
export function kindWords({ shape, isOptional, isNullable }: FieldShape, language: Language): string[] {
  const { reference } = wordsIn(language).calculators
  return [
    shapeWords(shape, language),
    isNullable ? reference.mayBeNull : [],
    isOptional ? reference.mayBeLeftOut : [],
  ].flat()
}

function shapeWords(shape: Shape, language: Language): string {
  const { reference } = wordsIn(language).calculators
  const { of, depth } = innermost(shape)
  if (of.kind === 'choice')
    return say(depth === 0 ? reference.choiceOf : reference.listOfChoices, language, { list: of.values.map(String) })
  const kinds = [reference.kinds, reference.lists, reference.listsOfLists][Math.min(depth, 2)] ?? reference.kinds
  return of.kind === 'number' && of.isWhole ? kinds.whole : kinds[of.kind]
}

/** What the lists of a shape are of, and how many are within each other. */
function innermost(of: Shape, depth = 0): { of: Shape; depth: number } {
  return of.kind === 'list' && depth < 2 ? innermost(of.of, depth + 1) : { of, depth }
}
