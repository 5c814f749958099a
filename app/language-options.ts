import 'server-only'
import { chosenLanguage } from '@/lib/kitchen/people/chosen-language.input'
import type { Words } from '@/lib/words/words'

/** The languages that can be chosen, each by its own name. */
export function languageOptions({ languages }: Words['people']): { value: string; label: string }[] {
  return chosenLanguage.unwrap().options.map((language) => ({ value: language, label: languages[language] }))
}
