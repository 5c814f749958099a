import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import { nameInUnit } from '@/lib/words/format/name-in-unit'
import { sayName } from '@/lib/words/say'
import { AnswerText, isPlain } from './answer-text'
import type { Sayer } from './sayer'

type Row = Readonly<Record<string, unknown>>

/** A list of lines of one form as a table: a column for each of their fields, its unit in the heading. */
export function AnswerTable({ name, rows, sayer }: { name: string; rows: readonly Row[]; sayer: Sayer }) {
  const flat = rows.map((row) => flatOf(row))
  const columns = [...new Set(flat.flatMap((row) => Object.keys(row)))].map((key) => {
    const own = key.split('.').at(-1) ?? key
    const unit = sayer.own.screenUnit(own)
    const numeric =
      flat.some((row) => typeof row[key] === 'number') &&
      flat.every((row) => typeof row[key] === 'number' || (row[key] ?? null) === null)
    return { key, own, numeric, label: unit ? nameInUnit(labelOf(key, sayer), unit) : labelOf(key, sayer) }
  })
  return (
    <SheetTable caption={sayer.own.field(name)} captionHidden columns={columns}>
      {flat.map((row, i) => (
        <tr key={i}>
          {columns.map(({ key, own, numeric }) => (
            <Cell key={key} numeric={numeric}>
              {row[key] === undefined ? null : <AnswerText name={own} value={row[key]} sayer={sayer} unitAbove />}
            </Cell>
          ))}
        </tr>
      ))}
    </SheetTable>
  )
}

const labelOf = (key: string, { own, text, language }: Sayer) =>
  key
    .split('.')
    .map((part) => own.field(part))
    .reduce((group, name) => sayName(text.reference.inside, language, { group, name }))

/** Groups within a line become columns of their own: `limit.maxMgPerKg`. */
function flatOf(row: Row, path = ''): Row {
  return Object.assign(
    {},
    ...Object.entries(row).map(([key, value]) =>
      isPlain(value) || Array.isArray(value) ? { [`${path}${key}`]: value } : flatOf(value as Row, `${path}${key}.`),
    ),
  ) as Row
}
