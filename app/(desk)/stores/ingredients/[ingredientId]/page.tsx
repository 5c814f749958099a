import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getIngredient } from '@/lib/kitchen/stores/get-ingredient'
import { listLots } from '@/lib/kitchen/stores/list-lots'
import { listLotsToConfirm } from '@/lib/kitchen/weighings/list-lots-to-confirm'
import { ActionRow } from '@/lib/ui/action-row'
import { DefinitionList } from '@/lib/ui/definition-list'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { StateWord } from '@/lib/ui/state-word'
import { formatDate } from '@/lib/words/format/date'
import { formatDay } from '@/lib/words/format/day'
import { largeMassUnit } from '@/lib/words/format/mass'
import { plainNumber } from '@/lib/words/format/plain-number'
import { unitPrice } from '@/lib/ui/unit-price'
import { withUnit } from '@/lib/words/format/with-unit'
import { listOf } from '@/lib/words/list-of'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { AllergenText } from '../../allergen-text'
import { Cautions } from './cautions'
import { Composition } from './composition'
import { Lots } from './lots'
import { Prices } from './prices'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stores.ingredients }
}

type IngredientPageProps = {
  params: Promise<{ ingredientId: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export default async function IngredientPage({ params, searchParams }: IngredientPageProps) {
  const { ingredientId } = await params
  const { after } = await searchParams
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { stores } = words
  const { ingredient: text } = stores
  const { bakery } = await ask(getDesk)
  const [ingredient, lots, toConfirm] = await Promise.all([
    ask(getIngredient, { ingredientId }),
    ask(listLots, { ingredientId, after }),
    ask(listLotsToConfirm, { ingredientId }),
  ])
  const { costs, activeName, activeShare, customaryLeastPct, customaryMostPct, customarySource } = ingredient
  const percent = (value: number) => withUnit(plainNumber(value, { locale: bakery.locale }), stores.form.pctUnit)
  const held = costs?.entries.find((entry) => entry.state === 'holds')
  const checkedAt = ingredient.allergensCheckedAt

  return (
    <Sheet
      kicker={stores.title}
      headline={ingredient.name}
      margin={{
        label: text.about,
        entries: [
          { term: text.kind, detail: stores.kinds[ingredient.kind] },
          ...(costs
            ? [
                {
                  term: say(text.priceToday, language, { day: formatDay(costs.today, bakery.locale) }),
                  detail: held
                    ? say(text.perUnit, language, {
                        price: unitPrice(held.perKg, { ...bakery, currency: held.currency }),
                        unit: largeMassUnit(bakery.massUnits),
                      })
                    : text.noPriceToday,
                  strong: held !== undefined,
                },
              ]
            : []),
          {
            term: text.state,
            detail: ingredient.endedAt ? (
              <StateWord word={text.ended} level="off" />
            ) : (
              <StateWord word={text.inUse} level={4} />
            ),
          },
          { term: text.since, detail: formatDate(ingredient.createdAt, bakery) },
        ],
      }}
    >
      <Cautions ingredient={ingredient} text={text} />
      <Section
        id="facts"
        title={text.facts}
        note={
          ingredient.mayEdit ? (
            <LinkButton tone="quiet" href={`/stores/ingredients/${ingredient.id}/change`}>
              {text.change}
            </LinkButton>
          ) : null
        }
      >
        <DefinitionList
          entries={[
            { term: text.labelName, detail: ingredient.labelName },
            {
              term: text.allergensChecked,
              detail: (
                <>
                  <AllergenText ingredient={ingredient} text={stores} language={language} />
                  {checkedAt ? (
                    <p className="text-small text-ink-2">
                      {say(text.checkedOn, language, { day: formatDate(checkedAt, bakery) })}
                    </p>
                  ) : null}
                </>
              ),
            },
            {
              term: text.active,
              detail:
                activeName !== null && activeShare !== null
                  ? say(text.activeText, language, { name: activeName, share: percent(activeShare * 100) })
                  : text.none,
            },
            {
              term: text.customary,
              detail:
                customaryLeastPct !== null && customaryMostPct !== null && customarySource !== null ? (
                  <>
                    <p>
                      {say(text.customaryText, language, {
                        least: percent(customaryLeastPct),
                        most: percent(customaryMostPct),
                      })}
                    </p>
                    <p className="text-small text-ink-2">
                      {say(text.customarySource, language, { source: customarySource })}
                    </p>
                    <p className="text-small text-ink-2">{text.customaryCaution}</p>
                  </>
                ) : (
                  text.none
                ),
            },
            {
              term: text.counts,
              detail: (
                <>
                  <p>
                    {ingredient.counted.length === 0
                      ? text.countsNothing
                      : listOf(
                          ingredient.counted.map((each) => stores.figures[each]),
                          language,
                        )}
                  </p>
                  <p className="text-small text-ink-2">
                    {ingredient.countsAsUsual ? text.countsUsual : text.countsOwn}
                  </p>
                  {ingredient.bindsWater ? <p>{text.bindsWater}</p> : null}
                </>
              ),
            },
            ...(ingredient.note
              ? [{ term: text.note, detail: <p className="max-w-measure whitespace-pre-line">{ingredient.note}</p> }]
              : []),
          ]}
        />
      </Section>
      <Composition figures={ingredient.figures} doubts={ingredient.doubts} locale={bakery.locale} stores={stores} />
      <Lots
        ingredientId={ingredient.id}
        lots={lots}
        toConfirm={toConfirm}
        bakery={bakery}
        words={words}
        language={language}
      />
      {costs ? (
        <Prices
          ingredientId={ingredient.id}
          costs={costs}
          mayEdit={ingredient.mayEdit}
          bakery={bakery}
          words={words}
          language={language}
        />
      ) : null}
      <ActionRow>
        <LinkButton tone="plain" href="/stores">
          {text.toStores}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
