import { spoiltLoaves } from '@/lib/kitchen/results/spoilt-loaves'
import { ArmMark } from '@/lib/ui/arm-mark'
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
import { saySameVolume } from './say-same-volume'
import type { ShownBakery, ShownComparison, ShownCosts, ShownResult } from './shown-result'

type CostTableProps = {
  result: ShownResult
  comparison: ShownComparison | null
  costs: ShownCosts
  bakery: ShownBakery
  forms: ResultForms
}

/** What each arm's loaf costs in ingredients beside what it gained; only for those who see costs. */
export function CostTable({ result, comparison, costs, bakery, forms }: CostTableProps) {
  const { text } = forms
  const names = namesOf(result)
  const gains = new Map(comparison?.arms.map(({ arm, effect }) => [arm, effect?.pct ?? null]))
  const currency = costs.currency ?? bakery.currency
  const amount = (text: string | null) => (text === null ? '–' : forms.loafMoney(text, currency))
  const signedAmount = (text: string) => `${Number(text) > 0 ? '+' : ''}${amount(text)}`
  return (
    <Section id="cost" title={comparison ? text.cost : text.costOnly}>
      <SheetTable
        caption={comparison ? text.cost : text.costOnly}
        captionHidden
        columns={[
          { key: 'arm', label: text.arm },
          { key: 'loaf', label: text.perLoaf, numeric: true },
          ...(comparison ? [{ key: 'gain', label: text.gain, numeric: true }] : []),
        ]}
      >
        {costs.arms.map((cost) => {
          const gain = gains.get(cost.arm) ?? null
          const more = cost.differencePerLoaf
          return (
            <tr key={cost.arm}>
              <ArmCell arm={cost.arm} name={names.get(cost.arm)} forms={forms} narrow />
              <Cell numeric>
                {amount(cost.perLoaf)}
                {cost.arm === 0 || more === null ? null : (
                  <span className="block text-small text-ink-2">{signedAmount(more)}</span>
                )}
              </Cell>
              {comparison ? <Cell numeric>{cost.arm === 0 ? null : gain === null ? '–' : forms.pct(gain)}</Cell> : null}
            </tr>
          )
        })}
      </SheetTable>
      <CostNotes costs={costs} bakery={bakery} forms={forms} />
    </Section>
  )
}

/** The same cost by dough, mass and volume of bread, and how many loaves were spoilt. */
export function CostByUnit({ result, costs, bakery, forms }: Omit<CostTableProps, 'comparison'>) {
  const { text, language } = forms
  const names = namesOf(result)
  const currency = costs.currency ?? bakery.currency
  const unit = largeMassUnit(bakery.massUnits)
  const title = say(text.byUnit, language, { unit })
  const amount = (text: string | null) => (text === null ? '–' : forms.loafMoney(text, currency))
  const { confidencePct } = result.declared
  const tenth = (pct: number) => forms.plain(Math.round(10 * pct) / 10)
  const spoilt = (good: ShownCosts['arms'][number]['good']) => {
    const found = spoiltLoaves(good, result.trial.piecesPerBatch, confidencePct)
    if (found === null) return text.notCounted
    const { count, of, interval } = found
    return (
      <>
        {say(text.spoiltOf, language, { count, of })}
        {interval ? (
          <span className="block text-small text-ink-2">
            {say(text.spoiltRange, language, {
              low: tenth(interval.lowPct),
              high: tenth(interval.highPct),
            })}
          </span>
        ) : null}
      </>
    )
  }
  return (
    <Section id="cost-by-unit" title={title} note={say(text.spoiltNote, language, { confidence: confidencePct })}>
      <SheetTable
        caption={title}
        captionHidden
        columns={[
          { key: 'arm', label: text.arm },
          { key: 'dough', label: text.perDough, numeric: true },
          { key: 'loaf', label: text.byLoaf, numeric: true },
          { key: 'spoilt', label: text.spoilt, numeric: true },
          { key: 'mass', label: say(text.byMass, language, { unit }), numeric: true },
          { key: 'litre', label: text.byLitre, numeric: true },
        ]}
      >
        {costs.arms.map((cost) => (
          <tr key={cost.arm}>
            <ArmCell arm={cost.arm} name={names.get(cost.arm)} forms={forms} />
            <Cell numeric>{amount(cost.perBatch)}</Cell>
            <Cell numeric>{amount(cost.perLoaf)}</Cell>
            <Cell numeric>{spoilt(cost.good)}</Cell>
            <Cell numeric>{cost.perKg === null ? '–' : unitPrice(cost.perKg, { ...bakery, currency })}</Cell>
            <Cell numeric>{amount(cost.perLitre)}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}

/** At which price of what a dough doses a litre costs as much as the control's; nothing where no dough doses anything. */
export function SameVolume({ result, costs, bakery, forms }: Omit<CostTableProps, 'comparison'>) {
  const { text, language } = forms
  const currency = costs.currency ?? bakery.currency
  const said = costs.arms.flatMap((cost) => {
    const sentence = saySameVolume(cost, { currency, bakery, forms })
    return sentence === null ? [] : [{ arm: cost.arm, sentence }]
  })
  if (said.length === 0) return null
  const { confidencePct } = result.declared
  return (
    <Section
      id="same-volume"
      title={text.sameVolume.title}
      note={say(text.sameVolume.note, language, { confidence: confidencePct })}
    >
      <ul className="max-w-measure">
        {said.map(({ arm, sentence }) => (
          <li key={arm} className="mb-1.5 flex items-baseline gap-2">
            <ArmMark arm={forms.letter(arm)} letterHidden />
            <span>{sentence}</span>
          </li>
        ))}
      </ul>
    </Section>
  )
}

function namesOf(result: ShownResult): Map<number, string> {
  return new Map(result.declared.arms.map(({ position, name }) => [position, name]))
}

function CostNotes({ costs, bakery, forms }: Pick<CostTableProps, 'costs' | 'bakery' | 'forms'>) {
  const { text, language } = forms
  const unpriced = costs.arms.filter((cost) => cost.unpriced.length > 0)
  return (
    <ul className="mt-3 max-w-measure text-small text-ink-2">
      {costs.arms.some(({ mixedCurrencies }) => mixedCurrencies) ? (
        <li className="text-warn">{text.mixedCurrencies}</li>
      ) : null}
      {unpriced.map((cost) => (
        <li key={`unpriced ${cost.arm}`} className="text-warn">
          {say(text.unpriced, language, { dough: forms.dough(cost.arm), ingredients: cost.unpriced })}
        </li>
      ))}
      {costs.latestPriceFrom === null ? null : (
        <li>
          {say(text.costDay, language, {
            day: formatDay(costs.day, bakery.locale),
            from: formatDay(costs.latestPriceFrom, bakery.locale),
          })}
        </li>
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
