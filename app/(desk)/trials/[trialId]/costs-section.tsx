import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDay } from '@/lib/words/format/day'
import { formatMoneyAmount } from '@/lib/words/format/money-amount'
import { say } from '@/lib/words/say'
import { DoughName } from '../dough-name'
import type { PlanPart, PlanSeen } from './plan-seen'

type CostsSectionProps = Omit<PlanPart, 'format'> & { costs: NonNullable<PlanSeen['costs']>; locale: string }

/** What the doughs cost in ingredients, for those who may see it. */
export function CostsSection({ plan, costs, words, language, locale }: CostsSectionProps) {
  const { trials } = words
  const { plan: text } = trials
  const day = formatDay(costs.day, locale)
  return (
    <Section id="costs" title={text.costs} note={say(text.costsNote, language, { day })}>
      {'mixedCurrencies' in costs ? (
        <p>{text.costMixed}</p>
      ) : 'unpriced' in costs ? (
        <p className="max-w-measure">
          {costs.unpriced.length === 0
            ? say(text.costNoPrices, language, { day })
            : say(text.costUnpriced, language, { day, list: costs.unpriced })}
        </p>
      ) : (
        <Sums costs={costs} />
      )}
    </Section>
  )

  function Sums({ costs: sums }: { costs: Extract<NonNullable<PlanSeen['costs']>, { currency: string }> }) {
    const money = (amount: string, mostDigits?: number) =>
      formatMoneyAmount(amount, { locale, currency: sums.currency, mostDigits })
    return (
      <div className="max-w-measure">
        <SheetTable
          caption={text.costs}
          captionHidden
          columns={[
            { key: 'dough', label: text.doughColumn },
            { key: 'piece', label: text.costPiece, numeric: true },
            { key: 'more', label: text.costMore, numeric: true },
            { key: 'trial', label: text.costTrial, numeric: true },
          ]}
        >
          {sums.arms.map((arm) => (
            <tr key={arm.position}>
              <Cell head>
                <DoughName position={arm.position} name={plan.arms[arm.position]?.name} text={trials} />
              </Cell>
              <Cell numeric>{money(arm.perPiece, 4)}</Cell>
              <Cell numeric>{arm.position === 0 ? null : money(arm.differencePerPiece, 4)}</Cell>
              <Cell numeric>{money(arm.ofTrial)}</Cell>
            </tr>
          ))}
        </SheetTable>
        <p className="mt-2 text-small text-ink-2">{say(text.costTotal, language, { total: money(sums.trialTotal) })}</p>
      </div>
    )
  }
}
