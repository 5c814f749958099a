import { PageLink } from '@/lib/ui/page-link'
import { Fragment } from 'react'
import type { Allergen, IngredientKind } from '@/lib/kitchen/stores/ingredient-facts.input'
import { Cell } from '@/lib/ui/cell'
import { GroupRow } from '@/lib/ui/group-row'
import { SheetTable } from '@/lib/ui/sheet-table'
import { StateWord } from '@/lib/ui/state-word'
import { largeMassUnit, type MassUnits } from '@/lib/words/format/mass'
import { unitPrice } from '@/lib/ui/unit-price'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { AllergenText } from './allergen-text'

type Row = {
  id: string
  name: string
  kind: IngredientKind
  allergens: readonly Allergen[]
  allergensCheckedAt: Date | null
  composition: 'unknown' | 'in-part' | 'stated'
}

type IngredientTableProps = {
  /** In the order of their kinds. */
  ingredients: readonly Row[]
  caption: string
  /** Left out for whoever does not see costs. */
  costs?: { prices: ReadonlyMap<string, { perKg: string; currency: string }> }
  bakery: { locale: string; massUnits: MassUnits }
  text: Words['stores']
  language: Language
}

/** Ingredients under the heads of their kinds. */
export function IngredientTable({ ingredients, caption, costs, bakery, text, language }: IngredientTableProps) {
  const columns = [
    { key: 'name', label: text.name },
    ...(costs
      ? [{ key: 'price', label: say(text.price, language, { unit: largeMassUnit(bakery.massUnits) }), numeric: true }]
      : []),
    { key: 'allergens', label: text.allergensColumn },
    { key: 'composition', label: text.compositionColumn },
  ]
  return (
    <SheetTable caption={caption} captionHidden columns={columns}>
      {ingredients.map((ingredient, index) => {
        const price = costs?.prices.get(ingredient.id)
        return (
          <Fragment key={ingredient.id}>
            {ingredients[index - 1]?.kind === ingredient.kind ? null : (
              <GroupRow label={text.kinds[ingredient.kind]} columns={columns.length} />
            )}
            <tr>
              <Cell head>
                <PageLink href={`/stores/ingredients/${ingredient.id}`}>{ingredient.name}</PageLink>
              </Cell>
              {costs ? (
                <Cell numeric>
                  {price ? unitPrice(price.perKg, { ...bakery, currency: price.currency }) : text.noPrice}
                </Cell>
              ) : null}
              <Cell>
                <AllergenText ingredient={ingredient} text={text} language={language} />
              </Cell>
              <Cell>
                <CompositionWord state={ingredient.composition} text={text} />
              </Cell>
            </tr>
          </Fragment>
        )
      })}
    </SheetTable>
  )
}

function CompositionWord({ state, text }: { state: Row['composition']; text: Words['stores'] }) {
  const word = text.composition[state]
  if (state === 'unknown') return <StateWord word={word} level={0} tone="warn" />
  return <StateWord word={word} level={state === 'stated' ? 4 : 2} />
}
