// Making an Intl form takes longer than using it a hundred times, and a page uses the same few over and over.
const numberForms = new Map<string, Intl.NumberFormat>()
const dateForms = new Map<string, Intl.DateTimeFormat>()
const pluralRules = new Map<string, Intl.PluralRules>()
const listForms = new Map<string, Intl.ListFormat>()
const languages = new Map<string, string>()

/**
 * The number form of a locale, made once. Its kinds are few: those of the languages, currencies and digits in use.
 * @throws RangeError for an unknown locale, currency or digits out of range
 */
export function numberFormOf(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  return kept(numberForms, `${locale} ${JSON.stringify(options)}`, () => new Intl.NumberFormat(locale, options))
}

/**
 * The date form of a locale, made once.
 * @throws RangeError for an unknown locale or zone
 */
export function dateFormOf(locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  return kept(dateForms, `${locale} ${JSON.stringify(options)}`, () => new Intl.DateTimeFormat(locale, options))
}

/** By which form a language counts, made once. @throws RangeError for an unknown language */
export function pluralRulesOf(language: string): Intl.PluralRules {
  return kept(pluralRules, language, () => new Intl.PluralRules(language))
}

/** How a language sets names one after another, made once. @throws RangeError for an unknown language */
export function listFormOf(language: string): Intl.ListFormat {
  return kept(listForms, language, () => new Intl.ListFormat(language, { type: 'unit' }))
}

/** The language alone of a tag, looked up once. @throws RangeError for an unknown one */
export function plainLanguageOf(tag: string): string {
  return kept(languages, tag, () => new Intl.Locale(tag).language)
}

function kept<Form>(forms: Map<string, Form>, key: string, make: () => Form): Form {
  const held = forms.get(key)
  if (held !== undefined) return held
  const made = make()
  forms.set(key, made)
  return made
}
