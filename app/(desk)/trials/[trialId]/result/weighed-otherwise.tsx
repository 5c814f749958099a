import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { planFormat } from '@/lib/words/format/plan-format'
import { say } from '@/lib/words/say'
import { lineOfDough } from './line-of-dough'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

type Weighings = NonNullable<ShownResult['weighings']>
type Part = { result: ShownResult; bakery: ShownBakery; forms: ResultForms }

/** Lines that were weighed otherwise than planned, and weighings that were corrected. Nothing where there are none. */
export function WeighedOtherwise({ result, bakery, forms }: Part) {
  if (!result.weighings) return null
  const { off, corrections } = result.weighings
  return (
    <>
      {off.length > 0 ? <LinesOff off={off} bakery={bakery} forms={forms} /> : null}
      {corrections.length > 0 ? <Corrected corrections={corrections} bakery={bakery} forms={forms} /> : null}
    </>
  )
}

function LinesOff({ off, bakery, forms }: Omit<Part, 'result'> & Pick<Weighings, 'off'>) {
  const { language } = forms
  const text = forms.text.weighed
  const format = planFormat(bakery)
  return (
    <Section id="weighed-otherwise" title={text.title} note={text.note}>
      <SheetTable
        caption={text.title}
        captionHidden
        columns={[
          { key: 'dough', label: text.dough },
          { key: 'line', label: text.line },
          { key: 'planned', label: text.planned, numeric: true },
          { key: 'weighed', label: text.weighed, numeric: true },
          { key: 'who', label: text.who },
          { key: 'remark', label: text.remark },
        ]}
      >
        {off.map((line) => (
          <tr key={line.id}>
            <Cell head>{line.code}</Cell>
            <Cell>{lineOfDough(line, language)}</Cell>
            <Cell numeric>{line.plannedG > 0 ? format.weighedInUnit(line.plannedG, line.stepG) : text.none}</Cell>
            <Cell numeric>{asWeighed(line, line.stepG, bakery, forms)}</Cell>
            <Cell>{whoAt(line, bakery, forms)}</Cell>
            <Cell>{remarkOf(line, forms)}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}

function Corrected({ corrections, bakery, forms }: Omit<Part, 'result'> & Pick<Weighings, 'corrections'>) {
  const { text, language } = forms
  const { corrections: title, correctionsNote, dough, line: lineHead } = text.weighed
  return (
    <Section
      id="corrected-weighings"
      title={title}
      note={say(correctionsNote, language, { count: corrections.length })}
    >
      <SheetTable
        caption={title}
        captionHidden
        columns={[
          { key: 'dough', label: dough },
          { key: 'line', label: lineHead },
          { key: 'before', label: text.correctionBefore, numeric: true },
          { key: 'after', label: text.correctionAfter, numeric: true },
          { key: 'who', label: text.correctionWho },
          { key: 'why', label: text.correctionWhy },
        ]}
      >
        {corrections.map((line) => (
          <tr key={line.id}>
            <Cell head>{line.code}</Cell>
            <Cell>{lineOfDough(line, language)}</Cell>
            <Cell numeric>{asWeighed(line.before, line.stepG, bakery, forms)}</Cell>
            <Cell numeric>{asWeighed(line.after, line.stepG, bakery, forms)}</Cell>
            <Cell>{whoAt(line, bakery, forms)}</Cell>
            <Cell>{line.reason}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}

type AsWeighed = Pick<Weighings['off'][number], 'how' | 'massG'>

function asWeighed({ how, massG }: AsWeighed, stepG: number, bakery: ShownBakery, { text }: ResultForms): string {
  if (how === 'ticked') return text.weighed.ticked
  return massG === null || massG === 0 ? text.weighed.none : planFormat(bakery).weighedInUnit(massG, stepG)
}

function whoAt({ who, at }: { who: string; at: Date }, bakery: ShownBakery, { text, language }: ResultForms): string {
  return say(text.correctionWhoAt, language, { who, at: formatDateTime(at, bakery) })
}

function remarkOf({ isDose, found, isLate }: Weighings['off'][number], { text }: ResultForms): string {
  if (!isDose && found !== 'left-out') return text.weighed.listed
  return isLate ? text.weighed.late : text.weighed.out
}
