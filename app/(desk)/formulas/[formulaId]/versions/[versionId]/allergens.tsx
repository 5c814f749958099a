import { DefinitionList } from '@/lib/ui/definition-list'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { listOf } from '@/lib/words/list-of'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { allergenChangeWords } from '../../../allergen-change-words'
import type { VersionSeen } from '../../../signing/version-seen'

type AllergensProps = {
  version: Pick<VersionSeen, 'allergens' | 'sinceSigned' | 'content' | 'ingredients' | 'state'>
  words: Words
  language: Language
}

/** The allergens that are known, what is not known, and what can hurt whoever makes this dough. */
export function Allergens({ version, words, language }: AllergensProps) {
  const { formulas, stores, desk } = words
  const { sheet } = formulas
  const { known, uncheckedIngredients } = version.allergens
  const names = (list: readonly { name: string }[]) =>
    listOf(
      list.map(({ name }) => name),
      language,
    )
  const dusty = version.ingredients.filter(({ dustCaution }) => dustCaution)
  const ended = version.ingredients.filter(({ isEnded }) => isEnded)
  const hasEgg = version.content.stages.some((stage) => stage.lines.some((line) => line.ingredient.kind === 'egg'))
  return (
    <Section id="allergens" title={sheet.allergens} note={sheet.allergensNote}>
      {known.length > 0 || uncheckedIngredients.length === 0 ? (
        <p>
          {known.length === 0 ? (
            sheet.containsNone
          ) : (
            <>
              {sheet.contains}{' '}
              <b>
                {listOf(
                  known.map((each) => stores.allergens[each]),
                  language,
                )}
              </b>
            </>
          )}
        </p>
      ) : null}
      {uncheckedIngredients.length > 0 ? (
        <Notice tone="warn" word={sheet.unchecked}>
          {say(sheet.uncheckedText, language, { names: names(uncheckedIngredients) })}
        </Notice>
      ) : null}
      {version.sinceSigned && version.state !== 'withdrawn' ? (
        <Notice tone="stop" word={sheet.sinceSigned}>
          {paragraph(
            [...allergenChangeWords(version.sinceSigned, formulas, stores, language), sheet.sinceSignedText],
            language,
          )}
        </Notice>
      ) : null}
      {ended.length > 0 && version.state !== 'withdrawn' ? (
        <Notice tone="warn" word={desk.attention}>
          {say(sheet.ended, language, { names: names(ended) })}
        </Notice>
      ) : null}
      <div className="mt-4">
        <DefinitionList
          entries={[
            { term: sheet.rawDoughTerm, detail: hasEgg ? sheet.rawDoughEgg : sheet.rawDough },
            ...(dusty.length > 0
              ? [{ term: sheet.dustTerm, detail: say(sheet.dust, language, { names: names(dusty) }) }]
              : []),
          ]}
        />
      </div>
    </Section>
  )
}
