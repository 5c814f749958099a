import 'server-only'
import { paragraph } from '../words/paragraph'
import { fill } from '../words/say'
import type { Facts } from '../words/text'
import { withUnit } from '../words/format/with-unit'
import { wordsIn, type Language, type Words } from '../words/words'
import type { Problem } from './refusal'
import type { Refused } from './result'

/** A refusal as a person reads it: one sentence for the whole, one for each field. */
export function wordsOfRefusal(
  refusal: Refused,
  language: Language,
): { sentence: string; problems: Record<string, string> } {
  const words = wordsIn(language)
  const problems = Object.fromEntries(
    refusal.problems.map((problem) => [
      problem.path,
      wordsOfProblem({ ...problem, facts: boundsInUnits(problem) }, language),
    ]),
  )
  return {
    sentence: paragraph(
      [fill(words.refusals[refusal.code], language, refusal.facts), whereToLook(refusal, words)],
      language,
    ),
    problems,
  }
}

/** Where to look for what a plan cannot be worked out of; nothing for any other refusal. */
function whereToLook({ code, facts }: Refused, { planFigures }: Words): string | null {
  if (code !== 'plan-not-possible') return null
  return Object.entries(planFigures).find(([name]) => name === facts.figure)?.[1] ?? planFigures.several
}

/** The facts of a bound with the unit that the field is kept in, which need not be the one that stood beside it. */
function boundsInUnits({ path, facts }: Problem): Facts {
  const unit = /MassG$/.test(path) ? 'g' : /TempC$/.test(path) ? '°C' : null
  if (unit === null) return facts
  return Object.fromEntries(
    Object.entries(facts).map(([name, fact]) => [
      name,
      name === 'min' || name === 'max' ? withUnit(String(fact), unit) : fact,
    ]),
  )
}

/** What is wrong at one place, as a person reads it. */
export function wordsOfProblem({ code, facts }: Pick<Problem, 'code' | 'facts'>, language: Language): string {
  return fill(wordsIn(language).problems[code], language, facts)
}
