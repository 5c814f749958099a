import 'server-only'
import { fill } from '../words/say'
import { wordsIn, type Language } from '../words/words'
import type { Problem } from './refusal'
import type { Refused } from './result'

/** A refusal as a person reads it: one sentence for the whole, one for each field. */
export function wordsOfRefusal(refusal: Refused, language: Language): { sentence: string; problems: Record<string, string> } {
  const words = wordsIn(language)
  const problems = Object.fromEntries(refusal.problems.map((problem) => [problem.path, wordsOfProblem(problem, language)]))
  return { sentence: fill(words.refusals[refusal.code], language, refusal.facts), problems }
}

/** What is wrong at one place, as a person reads it. */
export function wordsOfProblem({ code, facts }: Pick<Problem, 'code' | 'facts'>, language: Language): string {
  return fill(wordsIn(language).problems[code], language, facts)
}
