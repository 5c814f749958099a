import 'server-only'
import type { CalcId } from '../../calc/catalogue'
import { wordsIn, type Language, type Words } from '../../words/words'
import { screenUnit } from './on-screen'
import { unitEnding } from './unit-ending'

type Joined = Words['calculations']
type TitledId = {
  [Subject in keyof Joined]: Joined[Subject] extends { readonly titles: infer Titles } ? keyof Titles : never
}[keyof Joined]

// Does not compile while a calculation of the catalogue has no title.
true satisfies [Exclude<CalcId, TitledId>] extends [never] ? true : Exclude<CalcId, TitledId>

type SubjectWords = {
  subject: string
  titles: Record<string, string>
  fields: Record<string, string>
  choices: Record<string, string>
}

/** How a calculation and its fields are called. What has no word keeps its name, which a test forbids. */
export type CalculationWords = {
  subject: string
  title: string
  field(name: string): string
  /** The unit that a field's name ends in, as JSON holds it. */
  unit(name: string): string | undefined
  /** The unit that a screen asks and shows it in. */
  screenUnit(name: string): string | undefined
  /** A value of a choice; undefined when it is none, but a text of somebody's own. */
  choice(value: string): string | undefined
}

export function calculationWords(id: string, language: Language): CalculationWords {
  const { calculations, calculators } = wordsIn(language)
  const subjects: Readonly<Record<string, SubjectWords | undefined>> = calculations
  const words = subjects[id.split('/')[0] ?? '']
  if (!words) throw new Error(`no words for the subject of ${id}`)
  return {
    subject: words.subject,
    title: own(words.titles, id) ?? id,
    field: (name) => own(words.fields, name) ?? name,
    unit: (name) => {
      const ending = unitEnding(name)
      return ending && calculators.units[ending]
    },
    screenUnit: (name) => {
      const ending = screenUnit(name)
      return ending && calculators.units[ending]
    },
    choice: (value) => own(words.choices, value),
  }
}

function own(words: Record<string, string>, key: string): string | undefined {
  return Object.hasOwn(words, key) ? words[key] : undefined
}
