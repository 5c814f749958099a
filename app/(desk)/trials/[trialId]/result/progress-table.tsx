import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import type { ResultForms } from './result-forms'
import type { ShownResult } from './shown-result'

/** How far the baking is, by mixing day; nothing of any arm. */
export function ProgressTable({ result, forms }: { result: ShownResult; forms: ResultForms }) {
  const { text } = forms
  return (
    <Section id="progress" title={text.progress}>
      <SheetTable
        caption={text.progress}
        captionHidden
        columns={[
          { key: 'day', label: text.day },
          { key: 'measured', label: text.done, numeric: true },
          { key: 'ended', label: text.lostCount, numeric: true },
          { key: 'open', label: text.openCount, numeric: true },
        ]}
      >
        {result.analysis.days.map((day) => (
          <tr key={day.day}>
            <Cell head>{day.day}</Cell>
            <Cell numeric>{day.measured}</Cell>
            <Cell numeric>{day.ended}</Cell>
            <Cell numeric>{day.open}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}
