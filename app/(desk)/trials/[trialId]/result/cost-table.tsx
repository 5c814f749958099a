import { Cell } from '@/lib/ui/cell'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { unitPrice } from '@/lib/ui/unit-price'
import { formatDay } from '@/lib/words/format/day'
import { largeMassUnit } from '@/lib/words/format/mass'
import { say } from '@/lib/words/say'
import { ArmCell } from './arm-cell'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownComparison, ShownCosts, ShownResult } from './shown-result'

type CostTableProps = { result: ShownResult; comparison: ShownComparison | null; costs: ShownCosts; bakery: ShownBakery; forms: ResultForms }

/** What each arm's loaf costs in ingredients beside what it gained; only for those who see costs. */
export function CostTable({ result, comparison, costs, bakery, forms }: CostTableProps) {
  const { text, language } = forms
  const names = new Map(result.declared.arms.map(({ position, name }) => [position, name]))
  const gains = new Map(comparison?.arms.map(({ arm, effect }) => [arm, effect?.pct ?? null]))
  const currency = costs.currency ?? bakery.currency
  const unit = largeMassUnit(bakery.massUnits)
  const byGood = costs.arms.every(({ perGoodPiece, perPlannedPiece }) => perGoodPiece !== null || perPlannedPiece === null)
  const loaf = (amount: string | null) => (amount === null ? '–' : forms.loafMoney(amount, currency))
  const difference = (amount: string | null) => (amount === null ? '–' : `${Number(amount) > 0 ? '+' : ''}${forms.loafMoney(amount, currency)}`)
  return (
    <Section id="cost" title={text.cost}>
      <SheetTable
        caption={text.cost}
        captionHidden
        columns={[
          { key: 'arm', label: text.arm },
          { key: 'loaf', label: byGood ? text.perLoaf : text.perPlannedLoaf, numeric: true },
          { key: 'more', label: text.costDifference, numeric: true },
          { key: 'gain', label: text.gain, numeric: true },
          { key: 'kg', label: say(text.perKg, language, { unit }), numeric: true },
          { key: 'litre', label: text.perLitre, numeric: true },
          { key: 'good', label: text.good, numeric: true },
        ]}
      >
        {costs.arms.map((cost) => {
          const gain = gains.get(cost.arm) ?? null
          return (
            <tr key={cost.arm}>
              <ArmCell arm={cost.arm} name={names.get(cost.arm)} forms={forms} />
              <Cell numeric>{loaf(byGood ? cost.perGoodPiece : cost.perPlannedPiece)}</Cell>
              <Cell numeric>{cost.arm === 0 ? '' : difference(byGood ? cost.differencePerGoodPiece : cost.differencePerPlannedPiece)}</Cell>
              <Cell numeric>{gain === null ? (cost.arm === 0 ? '' : '–') : forms.pct(gain)}</Cell>
              <Cell numeric>{cost.perKg === null ? '–' : unitPrice(cost.perKg, { ...bakery, currency })}</Cell>
              <Cell numeric>{loaf(cost.perLitre)}</Cell>
              <Cell numeric>{cost.good ? say(text.goodOf, language, { pieces: cost.good.pieces, doughs: cost.good.batches }) : text.notCounted}</Cell>
            </tr>
          )
        })}
      </SheetTable>
      <CostNotes costs={costs} bakery={bakery} forms={forms} />
    </Section>
  )
}

function CostNotes({ costs, bakery, forms }: Pick<CostTableProps, 'costs' | 'bakery' | 'forms'>) {
  const { text, language } = forms
  const unit = largeMassUnit(bakery.massUnits)
  const currency = costs.currency ?? bakery.currency
  const unpriced = costs.arms.filter((cost) => cost.unpriced.length > 0)
  return (
    <ul className="mt-3 max-w-measure text-small text-ink-2">
      {costs.arms.some(({ mixedCurrencies }) => mixedCurrencies) ? <li className="text-warn">{text.mixedCurrencies}</li> : null}
      {unpriced.map((cost) => (
        <li key={`unpriced ${cost.arm}`} className="text-warn">
          {say(text.unpriced, language, { dough: forms.dough(cost.arm), ingredients: cost.unpriced.join(', ') })}
        </li>
      ))}
      {costs.arms.map(({ arm, breakEven }) =>
        breakEven ? (
          <li key={`even ${arm}`}>
            {breakEven.outcome === 'never'
              ? say(text.breakEvenNever, language, { dough: forms.dough(arm), ingredient: breakEven.ingredient })
              : say(text.breakEven, language, {
                  dough: forms.dough(arm),
                  ingredient: breakEven.ingredient,
                  price: unitPrice(breakEven.perKg, { ...bakery, currency }),
                  unit,
                })}
          </li>
        ) : null,
      )}
      {costs.latestPriceFrom === null ? null : (
        <li>{say(text.costDay, language, { day: formatDay(costs.day, bakery.locale), from: formatDay(costs.latestPriceFrom, bakery.locale) })}</li>
      )}
      {unpriced.length > 0 ? (
        <li>
          <LinkButton tone="quiet" href="/stores">
            {text.toStores}
          </LinkButton>
        </li>
      ) : null}
    </ul>
  )
}
