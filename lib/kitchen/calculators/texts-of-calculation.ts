import 'server-only'
import type { Language } from '../../words/words'
import { calculationWords } from './calculation-words'

/** Everything that is written of a calculation, to look for words in: names, source, and its fields and choices however deep. */
export function textsOfCalculation(
  {
    id,
    source,
    fields,
    choices,
  }: { id: string; source: string; fields: readonly string[]; choices: readonly string[] },
  language: Language,
): string[] {
  const words = calculationWords(id, language)
  return [
    id,
    words.subject,
    words.title,
    source,
    ...fields.map(words.field),
    ...choices.flatMap((value) => words.choice(value) ?? []),
  ]
}
