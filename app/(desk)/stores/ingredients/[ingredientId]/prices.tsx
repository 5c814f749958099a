import { rulesOf } from '@/lib/ui/rules-of'
import type { PriceState } from '@/lib/kitchen/stores/rules'
import { enterPriceInput } from '@/lib/kitchen/stores/enter-price.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { EmptyState } from '@/lib/ui/empty-state'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormDone } from '@/lib/ui/form-done'
import { FormField } from '@/lib/ui/form-field'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { StateWord } from '@/lib/ui/state-word'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { formatDay } from '@/lib/words/format/day'
import { largeMassUnit, massInUnit, type MassUnits } from '@/lib/words/format/mass'
import { massText } from '@/lib/words/format/mass-text'
import { formatMoneyAmount } from '@/lib/words/format/money-amount'
import { plainNumber } from '@/lib/words/format/plain-number'
import { unitPrice } from '@/lib/ui/unit-price'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { enter } from './actions'

type Entry = {
  id: string
  holdsFrom: string
  packMassG: number
  packPrice: string
  currency: string
  supplier: string
  perKg: string
  enteredBy: string
  enteredAt: Date
  state: PriceState
}

type PricesProps = {
  ingredientId: string
  costs: { today: string; currency: string; entries: readonly Entry[] }
  mayEdit: boolean
  bakery: { locale: string; timeZone: string; massUnits: MassUnits }
  words: Pick<Words, 'stores' | 'desk'>
  language: Language
}

/** What the ingredient has cost, latest first, and the form for a new price. */
export function Prices({ ingredientId, costs, mayEdit, bakery, words, language }: PricesProps) {
  const { ingredient: text } = words.stores
  const unit = largeMassUnit(bakery.massUnits)
  const [latest] = costs.entries
  return (
    <>
      <Section id="prices" title={text.prices} note={text.pricesNote}>
        {costs.entries.length === 0 ? (
          <EmptyState sentence={text.noPrices} />
        ) : (
          <SheetTable
            caption={text.prices}
            captionHidden
            columns={[
              { key: 'from', label: text.holdsFrom },
              { key: 'unit', label: say(text.unitPrice, language, { unit }), numeric: true },
              { key: 'price', label: text.packPrice, numeric: true },
              { key: 'pack', label: text.pack, numeric: true },
              { key: 'supplier', label: text.supplier },
              { key: 'state', label: text.priceState },
              { key: 'entered', label: text.entered },
            ]}
          >
            {costs.entries.map((entry) => (
              <tr key={entry.id}>
                <Cell whole>{formatDay(entry.holdsFrom, bakery.locale)}</Cell>
                <Cell numeric>{unitPrice(entry.perKg, { ...bakery, currency: entry.currency, mostDigits: 4 })}</Cell>
                <Cell numeric>
                  {formatMoneyAmount(entry.packPrice, { ...bakery, currency: entry.currency, mostDigits: 4 })}
                </Cell>
                <Cell numeric>{massText(entry.packMassG, unit, bakery.locale)}</Cell>
                <Cell>{entry.supplier}</Cell>
                <Cell whole>
                  <StateWord word={text.priceStates[entry.state]} level={levels[entry.state]} />
                </Cell>
                <Cell>
                  {say(text.enteredBy, language, {
                    name: entry.enteredBy,
                    at: formatDateTime(entry.enteredAt, bakery),
                  })}
                </Cell>
              </tr>
            ))}
          </SheetTable>
        )}
      </Section>
      {mayEdit ? (
        <Section id="new-price" title={text.newPrice} note={text.newPriceNote} screenOnly>
          <ActionForm rules={rulesOf(enterPriceInput)} action={enter.bind(null, ingredientId, bakery.locale, unit)}>
            <FormDone word={words.desk.done} text={text.priceKept} />
            <FieldStack>
              <FormField
                name="packMassG"
                type="number"
                label={text.packMass}
                hint={text.packMassHint}
                unit={unit}
                width="short"
                defaultValue={
                  latest
                    ? plainNumber(massInUnit(latest.packMassG, unit), {
                        locale: bakery.locale,
                        significant: 12,
                        grouped: false,
                      })
                    : undefined
                }
              />
              <FormField
                name="packPrice"
                type="number"
                label={text.packPrice}
                hint={text.packPriceHint}
                unit={costs.currency}
                width="short"
                required
              />
              <FormField
                name="supplier"
                type="text"
                label={text.supplierField}
                defaultValue={latest?.supplier}
                autoComplete="off"
              />
              <FormField
                name="holdsFrom"
                type="date"
                label={text.holdsFromField}
                hint={text.holdsFromHint}
                width="medium"
                defaultValue={costs.today}
              />
            </FieldStack>
            <ActionRow>
              <SubmitButton tone="go">{text.enterPrice}</SubmitButton>
            </ActionRow>
          </ActionForm>
        </Section>
      ) : null}
    </>
  )
}

const levels = { coming: 1, holds: 4, past: 0, replaced: 'off' } as const satisfies Record<PriceState, number | string>
