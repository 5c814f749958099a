import { plainLanguageOf } from './format/kept-forms'

/** Languages whose sentences follow each other without a blank (Unicode line breaking, East Asian scripts). */
const withoutBlank = new Set(['ja', 'zh'])

/** Whole sentences one after another, as the language sets them; a sentence that is not there is left out. */
export function paragraph(sentences: readonly (string | null | undefined)[], language: string): string {
  return sentences.filter(Boolean).join(withoutBlank.has(plainLanguageOf(language)) ? '' : ' ')
}
