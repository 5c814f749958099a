import 'server-only'
import { fill } from '../words/say'
import type { Facts } from '../words/text'
import { withUnit } from '../words/format/with-unit'
import { wordsIn, type Language, type Words } from '../words/words'
import type { Problem } from './refusal'
import type { Refused } from './result'

/** A refusal as a person reads it: one sentence for the whole, one for each field. */
export function wordsOfRefusal(refusal: Refused, language: Language): { sentence: string; problems: Record<string, string> } {
  const words = wordsIn(language)
  const problems = Object.fromEntries(refusal.problems.map((problem) => [problem.path, wordsOfProblem({ ...problem, facts: boundsInUnits(problem) }, language)]))
  return { sentence: fill(words.refusals[refusal.code], language, factsInWords(refusal, words)), problems }
}

/** The facts of a refusal, with those that are a code put in words. */
function factsInWords({ code, facts }: Refused, { planFigures }: Words): Facts {
  if (code !== 'plan-not-possible') return facts
  const figure = Object.entries(planFigures).find(([name]) => name === facts.figure)?.[1] ?? planFigures.several
  return { ...facts, figure }
}

/** The facts of a bound with the unit that the field is kept in, which need not be the one that stood beside it. */
function boundsInUnits({ path, facts }: Problem): Facts {
  const unit = /MassG$/.test(path) ? 'g' : /TempC$/.test(path) ? '°C' : null
  if (unit === null) return facts
  return Object.fromEntries(Object.entries(facts).map(([name, fact]) => [name, name === 'min' || name === 'max' ? withUnit(String(fact), unit) : fact]))
}

/** What is wrong at one place, as a person reads it. */
export function wordsOfProblem({ code, facts }: Pick<Problem, 'code' | 'facts'>, language: Language): string {
  return fill(wordsIn(language).problems[code], language, facts)
}
