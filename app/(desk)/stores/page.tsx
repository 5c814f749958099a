import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listIngredients } from '@/lib/kitchen/stores/list-ingredients'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { formatDay } from '@/lib/words/format/day'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { IngredientTable } from './ingredient-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stores.title }
}

export default async function StoresPage() {
  const language = await currentLanguage()
  const { stores: text, desk } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const { ingredients, mayEdit, costs } = await ask(listIngredients)
  const inUse = ingredients.filter((ingredient) => !ingredient.endedAt)
  const ended = ingredients.filter((ingredient) => ingredient.endedAt)
  const unchecked = inUse.filter((ingredient) => !ingredient.allergensCheckedAt)
  const table = { costs, bakery, text, language }

  return (
    <Sheet
      kicker={text.title}
      headline={inUse.length === 0 ? text.headlineEmpty : say(text.headline, language, { count: inUse.length })}
      actions={
        <>
          {mayEdit ? (
            <LinkButton tone="go" href="/stores/ingredients/new">
              {text.add}
            </LinkButton>
          ) : null}
          <LinkButton tone="plain" href="/stores/equipment">
            {text.toEquipment}
          </LinkButton>
          <LinkButton tone="plain" href="/stores/measures">
            {text.toMeasures}
          </LinkButton>
        </>
      }
      margin={{
        label: text.about,
        entries: [
          { term: text.unknownComposition, detail: inUse.filter(({ composition }) => composition === 'unknown').length },
          { term: text.uncheckedAllergens, detail: unchecked.length, strong: unchecked.length > 0 },
          ...(costs
            ? [
                { term: text.unpriced, detail: inUse.filter(({ id }) => !costs.prices.has(id)).length },
                { term: text.pricesOf, detail: formatDay(costs.today, bakery.locale) },
              ]
            : []),
          { term: text.rights, detail: text.rightsText },
        ],
      }}
    >
      {unchecked.length > 0 ? (
        <Notice tone="warn" word={desk.attention}>
          {say(text.uncheckedNotice, language, { count: unchecked.length, names: unchecked.map(({ name }) => name).join(', ') })}
        </Notice>
      ) : null}
      <Section id="ingredients" title={text.ingredients}>
        {inUse.length === 0 ? <EmptyState sentence={text.emptyText} /> : <IngredientTable ingredients={inUse} caption={text.ingredients} {...table} />}
      </Section>
      {ended.length > 0 ? (
        <Section id="not-in-use" title={text.notInUse} note={text.notInUseNote}>
          <IngredientTable ingredients={ended} caption={text.notInUse} {...table} />
        </Section>
      ) : null}
    </Sheet>
  )
}
