import 'server-only'
import { chosenLanguage } from '../kitchen/people/chosen-language.input'
import type { Words } from '../words/words'

/** The languages that can be chosen, each by its own name. */
export function languageOptions({ languages }: Words['people']): { value: string; label: string }[] {
  return chosenLanguage.unwrap().options.map((language) => ({ value: language, label: languages[language] }))
}
