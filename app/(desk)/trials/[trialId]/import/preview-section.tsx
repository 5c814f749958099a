import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { SideBySide } from '@/lib/ui/side-by-side'
import type { Words } from '@/lib/words/words'
import type { SeenRows } from './import-state'

/** Step three: what would be stored. */
export function PreviewSection({ rows, text }: { rows: SeenRows | null; text: Words['importing'] }) {
  if (!rows) {
    return (
      <Section id="preview" title={text.preview}>
        <p>{text.previewNone}</p>
      </Section>
    )
  }
  const { byMeasure, doughs, first } = rows
  const hasLevels = first.some(({ level }) => level !== '')
  return (
    <>
      <Section id="preview" title={text.preview}>
        {rows.sentences.map((sentence) => (
          <p key={sentence} className="max-w-measure">
            {sentence}
          </p>
        ))}
      </Section>
      {rows.oddTitle ? (
        <Section id="odd" title={rows.oddTitle} note={rows.oddNote}>
          <SheetTable
            caption={rows.oddTitle}
            captionHidden
            columns={[
              { key: 'line', label: text.line, numeric: true },
              { key: 'column', label: text.columnName },
              { key: 'value', label: text.value, numeric: true },
              { key: 'usual', label: text.oddUsual, numeric: true },
            ]}
          >
            {rows.odd.map(({ key, line, column, value, usual }) => (
              <tr key={key}>
                <Cell numeric>{line}</Cell>
                <Cell>{column}</Cell>
                <Cell numeric>{value}</Cell>
                <Cell numeric>{usual}</Cell>
              </tr>
            ))}
          </SheetTable>
        </Section>
      ) : null}
      {byMeasure.length > 0 ? (
        <SideBySide>
          <Section id="first" title={text.first}>
            <SheetTable
              caption={text.first}
              captionHidden
              columns={[
                { key: 'line', label: text.line, numeric: true },
                { key: 'dough', label: text.dough },
                { key: 'piece', label: text.piece, numeric: true },
                ...(hasLevels ? [{ key: 'level', label: text.level }] : []),
                { key: 'measure', label: text.measure },
                { key: 'value', label: text.value, numeric: true },
              ]}
            >
              {first.map(({ id, line, dough, measure, piece, level, value }) => (
                <tr key={id}>
                  <Cell numeric>{line}</Cell>
                  <Cell>{dough}</Cell>
                  <Cell numeric>{piece}</Cell>
                  {hasLevels ? <Cell whole>{level}</Cell> : null}
                  <Cell>{measure}</Cell>
                  <Cell numeric>{value}</Cell>
                </tr>
              ))}
            </SheetTable>
          </Section>
          <Section id="by-measure" title={text.byMeasure}>
            <SheetTable
              caption={text.byMeasure}
              captionHidden
              columns={[
                { key: 'measure', label: text.measure },
                { key: 'readings', label: text.readings, numeric: true },
              ]}
            >
              {byMeasure.map(({ name, count }) => (
                <tr key={name}>
                  <Cell head>{name}</Cell>
                  <Cell numeric>{count}</Cell>
                </tr>
              ))}
            </SheetTable>
          </Section>
        </SideBySide>
      ) : null}
      {doughs.length > 0 ? (
        <details className="mt-9 border-t border-rule pt-3" open={doughs.length <= 12}>
          <summary className="min-h-8 font-bold">{rows.doughsTitle}</summary>
          <SheetTable
            caption={rows.doughsTitle}
            captionHidden
            columns={[
              { key: 'dough', label: text.dough },
              { key: 'readings', label: text.readings, numeric: true },
              ...(rows.hasBecomes ? [{ key: 'becomes', label: text.becomes }] : []),
            ]}
          >
            {doughs.map(({ id, dough, readings, becomes }) => (
              <tr key={id}>
                <Cell head>{dough}</Cell>
                <Cell numeric>{readings}</Cell>
                {rows.hasBecomes ? <Cell>{becomes}</Cell> : null}
              </tr>
            ))}
          </SheetTable>
        </details>
      ) : null}
    </>
  )
}
