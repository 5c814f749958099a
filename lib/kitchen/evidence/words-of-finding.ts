import 'server-only'
import { fill } from '../../words/say'
import { wordsIn, type Language } from '../../words/words'
import type { Finding } from './finding'

/** A finding in words: what was checked, what came of it, and what there is to say beside that. */
export function wordsOfFinding(
  { what, outcome, facts }: Finding,
  language: Language,
): { what: string; outcome: string; fact: string | null } {
  const { evidence: text } = wordsIn(language)
  return { what: text.checks[what], outcome: text.outcomes[outcome], fact: factOf(facts, text, language) }
}

function factOf(
  facts: Finding['facts'],
  { facts: said, parts }: ReturnType<typeof wordsIn>['evidence'],
  language: Language,
): string | null {
  if (typeof facts.kind === 'string')
    return isKnownPart(facts.kind, parts) ? parts[facts.kind] : fill(said.otherPart, language, { kind: facts.kind })
  if (typeof facts.at === 'string' && facts.by !== facts.now) return fill(said.calculations, language, facts)
  if (typeof facts.at === 'string') return fill(said.unlike, language, facts)
  if (facts.code !== undefined) return fill(said.dough, language, facts)
  return facts.number === undefined ? null : fill(said.entry, language, facts)
}

function isKnownPart<Parts extends object>(kind: string, parts: Parts): kind is Extract<keyof Parts, string> {
  return kind in parts
}
