import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDate } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownResult } from './shown-result'

/** Every dough with its code, what became of it, and whether it counts. */
export function DoughsTable({ result, forms }: { result: ShownResult; forms: ResultForms }) {
  const { text, language } = forms
  const isTold = result.analysis.comparison !== null
  const dates = new Map(result.trial.mixDays.map(({ number, day }) => [number, day]))
  const dayText = (number: number) => {
    const date = dates.get(number)
    // A calendar day is kept as midnight UTC.
    return date
      ? say(text.dayDate, language, { number, date: formatDate(date, { locale: forms.locale, timeZone: 'UTC' }) })
      : String(number)
  }
  return (
    <Section id="doughs" title={text.batches} note={isTold ? null : text.batchesNote}>
      <SheetTable
        caption={text.batches}
        captionHidden
        columns={[
          { key: 'day', label: text.day },
          { key: 'order', label: text.order, numeric: true },
          { key: 'code', label: text.code },
          ...(isTold ? [{ key: 'arm', label: text.arm }] : []),
          { key: 'state', label: text.stateOf },
          { key: 'loaves', label: text.loaves, numeric: true },
          { key: 'mean', label: say(text.mean, language, { unit: forms.unit }), numeric: true },
          ...(isTold ? [{ key: 'counts', label: text.counts }] : []),
        ]}
      >
        {result.batches.map((batch) => (
          <tr key={batch.id}>
            <Cell whole>{dayText(batch.day)}</Cell>
            <Cell numeric>{batch.plannedOrder}</Cell>
            <Cell head>{batch.code}</Cell>
            {batch.arm === null ? null : <Cell>{forms.dough(batch.arm)}</Cell>}
            <Cell>{text.batchStates[batch.state]}</Cell>
            <Cell numeric>{forms.plain(batch.values.length)}</Cell>
            <Cell numeric>{batch.mean === null ? '–' : forms.value(batch.mean)}</Cell>
            {isTold ? <Cell>{batch.uncounted === null ? text.countsYes : text.uncounted[batch.uncounted]}</Cell> : null}
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}
