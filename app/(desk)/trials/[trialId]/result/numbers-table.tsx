import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import { ArmCell } from './arm-cell'
import type { ResultForms } from './result-forms'
import { verdictText } from './say-result'
import type { ShownArm, ShownComparison, ShownResult } from './shown-result'

/** Every number of the picture. */
export function NumbersTable({
  result,
  comparison,
  forms,
}: {
  result: ShownResult
  comparison: ShownComparison
  forms: ResultForms
}) {
  const { text, language, unit } = forms
  const names = new Map(result.declared.arms.map(({ position, name }) => [position, name]))
  const inUnit = { key: 'difference', label: say(text.difference, language, { unit }), numeric: true }
  const inPct = { key: 'pct', label: text.differencePct, numeric: true }
  return (
    <Section id="numbers" title={text.numbers}>
      <SheetTable
        caption={text.numbers}
        captionHidden
        columns={[
          { key: 'arm', label: text.arm },
          { key: 'verdict', label: text.verdict },
          { key: 'mean', label: say(text.mean, language, { unit }), numeric: true },
          // First what the verdict rests on.
          ...(forms.axisUnit === '%' ? [inPct, inUnit] : [inUnit, inPct]),
          { key: 'own', label: say(text.ownDays, language, { unit: forms.axisUnit }), numeric: true },
          { key: 'p', label: text.p, numeric: true },
          { key: 'doughs', label: text.doughs, numeric: true },
          { key: 'loaves', label: text.loaves, numeric: true },
        ]}
      >
        {comparison.arms.map((arm) => (
          <tr key={arm.arm}>
            <ArmCell arm={arm.arm} name={names.get(arm.arm)} forms={forms} />
            <Cell>
              <span className="block min-w-short">{verdictText(arm, comparison, forms)}</span>
            </Cell>
            <Cell numeric>{arm.mean === null ? '–' : forms.value(arm.mean)}</Cell>
            <EffectCells arm={arm} forms={forms} />
            <Cell numeric>{forms.plain(arm.batches)}</Cell>
            <Cell numeric>{forms.plain(arm.loaves)}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}

function EffectCells({ arm, forms }: { arm: ShownArm; forms: ResultForms }) {
  const { effect } = arm
  const inUnit = (
    <Cell numeric>
      {effect ? (
        <WithInterval
          estimate={effect.estimate}
          low={effect.low}
          high={effect.high}
          form={forms.difference}
          forms={forms}
        />
      ) : (
        '–'
      )}
    </Cell>
  )
  const inPct = (
    <Cell numeric>
      {effect && effect.pct !== null ? (
        <WithInterval estimate={effect.pct} low={effect.lowPct} high={effect.highPct} form={forms.pct} forms={forms} />
      ) : (
        '–'
      )}
    </Cell>
  )
  return (
    <>
      {forms.axisUnit === '%' ? inPct : inUnit}
      {forms.axisUnit === '%' ? inUnit : inPct}
      <Cell numeric>{effect?.own ? <OwnDays own={effect.own} forms={forms} /> : '–'}</Cell>
      <Cell numeric>{textOrDash(effect?.p, forms.p)}</Cell>
    </>
  )
}

/** What its own mixing days alone show, and how many they are. */
function OwnDays({ own, forms }: { own: NonNullable<NonNullable<ShownArm['effect']>['own']>; forms: ResultForms }) {
  const { text, language, bound } = forms
  return (
    <>
      {own.low === null || own.high === null
        ? '–'
        : say(text.range, language, { low: bound(own.low), high: bound(own.high) })}
      <span className="block text-small text-ink-2">{say(text.ownDaysCount, language, { count: own.days })}</span>
    </>
  )
}

type WithIntervalProps = {
  estimate: number
  low: number | null
  high: number | null
  form(value: number): string
  forms: ResultForms
}

/** A difference, with its interval in small below it. */
export function WithInterval({ estimate, low, high, form, forms }: WithIntervalProps) {
  return (
    <>
      {form(estimate)}
      {low === null || high === null ? null : (
        <span className="block text-small text-ink-2">
          {say(forms.text.range, forms.language, { low: form(low), high: form(high) })}
        </span>
      )}
    </>
  )
}

function textOrDash(value: number | null | undefined, form: (value: number) => string): string {
  return value === null || value === undefined ? '–' : form(value)
}
