import 'server-only'
import type { Actor } from '../auth/actor'
import { Language } from '../db/generated/enums'
import type { Caller } from './caller'

/**
 * The language in which the words of an actor are kept: the person's, else the bakery's, else what their browser asks
 * for as far as there are words in it. The pseudo-language is for screens alone.
 */
export function languageOf(actor: Actor, caller: Caller): Language {
  const asked = caller.browserLanguage
  return actor.language ?? Object.values(Language).find((language) => language === asked) ?? Language.en
}
