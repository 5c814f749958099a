import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listIngredients } from '@/lib/kitchen/stores/list-ingredients'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { ListFoot } from '@/lib/ui/list-foot'
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

export default async function StoresPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const { stores: text, desk } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const { inUse, ended, unchecked, unknownCompositionCount, mayEdit, costs } = await ask(listIngredients, { after })
  const table = { costs, bakery, text, language }
  const { names } = unchecked

  return (
    <Sheet
      kicker={text.title}
      headline={inUse.count === 0 ? text.headlineEmpty : say(text.headline, language, { count: inUse.count })}
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
          { term: text.unknownComposition, detail: unknownCompositionCount },
          { term: text.uncheckedAllergens, detail: unchecked.count, strong: unchecked.count > 0 },
          ...(costs
            ? [
                { term: text.unpriced, detail: costs.unpricedCount },
                { term: text.pricesOf, detail: formatDay(costs.today, bakery.locale) },
              ]
            : []),
          { term: text.rights, detail: text.rightsText },
        ],
      }}
    >
      {unchecked.count > 0 ? (
        <Notice tone="warn" word={desk.attention}>
          {unchecked.count > unchecked.names.length
            ? say(text.uncheckedMany, language, { count: unchecked.count, names })
            : say(text.uncheckedNotice, language, { count: unchecked.count, names })}
        </Notice>
      ) : null}
      <Section id="ingredients" title={text.ingredients}>
        {inUse.count === 0 ? (
          <EmptyState sentence={text.emptyText} />
        ) : (
          <>
            <IngredientTable ingredients={inUse.rows} caption={text.ingredients} {...table} />
            <ListFoot
              page={inUse}
              list={text.ingredients}
              address="/stores"
              anchor="ingredients"
              words={desk}
              language={language}
            />
          </>
        )}
      </Section>
      {ended.count > 0 ? (
        <Section id="not-in-use" title={text.notInUse} note={text.notInUseNote}>
          <IngredientTable ingredients={ended.rows} caption={text.notInUse} {...table} />
          <ListFoot
            page={ended}
            list={text.notInUse}
            address="/stores"
            anchor="not-in-use"
            words={desk}
            language={language}
          />
        </Section>
      ) : null}
    </Sheet>
  )
}
