import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import { ArmCell } from './arm-cell'
import type { ResultForms } from './result-forms'
import { verdictWord } from './say-result'
import type { ShownArm, ShownComparison, ShownResult } from './shown-result'

/** Every number of the picture. */
export function NumbersTable({ result, comparison, forms }: { result: ShownResult; comparison: ShownComparison; forms: ResultForms }) {
  const { text, language, unit } = forms
  const names = new Map(result.declared.arms.map(({ position, name }) => [position, name]))
  return (
    <Section id="numbers" title={text.numbers}>
      <SheetTable
        caption={text.numbers}
        captionHidden
        columns={[
          { key: 'arm', label: text.arm },
          { key: 'doughs', label: text.doughs, numeric: true },
          { key: 'loaves', label: text.loaves, numeric: true },
          { key: 'mean', label: say(text.mean, language, { unit }), numeric: true },
          { key: 'difference', label: say(text.difference, language, { unit }), numeric: true },
          { key: 'interval', label: say(text.interval, language, { unit }), numeric: true },
          { key: 'pct', label: text.differencePct, numeric: true },
          { key: 'intervalPct', label: text.intervalPct, numeric: true },
          { key: 'p', label: text.p, numeric: true },
          { key: 'verdict', label: text.verdict },
        ]}
      >
        {comparison.arms.map((arm) => (
          <tr key={arm.arm}>
            <ArmCell arm={arm.arm} name={names.get(arm.arm)} forms={forms} />
            <Cell numeric>{forms.plain(arm.batches)}</Cell>
            <Cell numeric>{forms.plain(arm.loaves)}</Cell>
            <Cell numeric>{arm.mean === null ? '–' : forms.value(arm.mean)}</Cell>
            <EffectCells arm={arm} forms={forms} />
            <Cell>{verdictText(arm, comparison, forms)}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}

function EffectCells({ arm, forms }: { arm: ShownArm; forms: ResultForms }) {
  const { effect } = arm
  const range = (low: number | null, high: number | null, form: (value: number) => string) =>
    low === null || high === null ? '–' : say(forms.text.range, forms.language, { low: form(low), high: form(high) })
  return (
    <>
      <Cell numeric>{effect ? forms.difference(effect.estimate) : '–'}</Cell>
      <Cell numeric>{effect ? range(effect.low, effect.high, forms.difference) : '–'}</Cell>
      <Cell numeric>{effect?.pct == null ? '–' : forms.pct(effect.pct)}</Cell>
      <Cell numeric>{effect ? range(effect.lowPct, effect.highPct, forms.pct) : '–'}</Cell>
      <Cell numeric>{effect?.p == null ? '–' : forms.p(effect.p)}</Cell>
    </>
  )
}

function verdictText(arm: ShownArm, comparison: ShownComparison, forms: ResultForms): string {
  const verdict = verdictWord(arm, comparison, forms)
  return arm.doubts.length > 0 && arm.verdict ? say(forms.text.doubtMark, forms.language, { verdict }) : verdict
}
