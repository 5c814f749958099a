import 'server-only'
import { fill } from '../words/say'
import { wordsIn, type Language } from '../words/words'
import type { Refused } from './result'

/** A refusal as a person reads it: one sentence for the whole, one for each field. */
export function wordsOfRefusal(refusal: Refused, language: Language): { sentence: string; problems: Record<string, string> } {
  const words = wordsIn(language)
  const problems = Object.fromEntries(
    refusal.problems.map(({ path, code, facts }) => [path, fill(words.problems[code], language, facts)]),
  )
  return { sentence: fill(words.refusals[refusal.code], language, refusal.facts), problems }
}
