import { Button } from '@/lib/ui/button'
import { CheckField } from '@/lib/ui/check-field'
import { controlClass } from '@/lib/ui/control-class'
import { ErrorLine } from '@/lib/ui/error-line'
import { SheetTable } from '@/lib/ui/sheet-table'
import type { FieldShape } from '@/lib/kitchen/calculators/shape-of-schema'
import { listOf } from '@/lib/words/list-of'
import { say, sayName } from '@/lib/words/say'
import type { Sayer } from '../../sayer'
import { rowStep } from './change-rows'
import { optionsOf } from './question-field'
import { rowCount, type Typed } from './typed'

export type QuestionTableProps = {
  name: string
  at: string
  fields: readonly FieldShape[]
  typed: Typed
  faults: ReadonlyMap<string, string>
  sayer: Sayer
}

type Column = { field: FieldShape; key: string; label: string }

/** A list of lines to type into: a row each, and buttons that send the form for a row more or less. */
export function QuestionTable({ name, at, fields, typed, faults, sayer }: QuestionTableProps) {
  const { own, text, language } = sayer
  const columns = columnsOf(fields, sayer)
  const label = own.field(name)
  const error = faults.get(at)
  return (
    <div id={at} tabIndex={-1} className="min-w-0">
      <SheetTable
        caption={label}
        columns={[
          { key: 'row', label: text.rowHead },
          ...columns.map(({ key, field, label: heading }) => ({ key, label: headingOf(field, heading, sayer) })),
          { key: 'remove', label: text.removeRow, screenOnly: true },
        ]}
      >
        {Array.from({ length: Math.max(1, rowCount(typed, at)) }, (_, row) => (
          <tr key={row}>
            <th scope="row">{row + 1}</th>
            {columns.map((column) => (
              <td key={column.key}>
                <CellField
                  column={column}
                  at={`${at}.${row}.${column.key}`}
                  label={say(text.row, language, { number: row + 1, name: column.label })}
                  typed={typed}
                  faults={faults}
                  sayer={sayer}
                />
              </td>
            ))}
            <td>
              <Button
                tone="quiet"
                name={rowStep}
                value={`remove:${at}:${row}`}
                fullLabel={say(text.removeRowFull, language, { number: row + 1, name: label })}
              >
                {text.removeRow}
              </Button>
            </td>
          </tr>
        ))}
      </SheetTable>
      {error ? <ErrorLine id={`${at}-error`} text={error} /> : null}
      <div className="mt-2 flex flex-wrap items-center gap-x-5">
        <Button
          tone="quiet"
          name={rowStep}
          value={`add:${at}`}
          fullLabel={say(text.addRowTo, language, { name: label })}
        >
          {text.addRow}
        </Button>
        <p className="text-small text-ink-2">{text.emptyRow}</p>
      </div>
    </div>
  )
}

/** Groups within a line become columns of their own: `limit.maxMgPerKg`. */
function columnsOf(fields: readonly FieldShape[], sayer: Sayer, path = '', before = ''): Column[] {
  return fields.flatMap((field) => {
    const word = sayer.own.field(field.name)
    const label = before ? sayName(sayer.text.reference.inside, sayer.language, { group: before, name: word }) : word
    const key = `${path}${field.name}`
    return field.shape.kind === 'group'
      ? columnsOf(field.shape.fields, sayer, `${key}.`, label)
      : [{ field, key, label }]
  })
}

function headingOf(
  { name, isOptional, isNullable }: FieldShape,
  label: string,
  { own, text, language }: Sayer,
): string {
  return listOf([label, own.screenUnit(name) ?? [], isOptional || isNullable ? text.optional : []].flat(), language)
}

type CellFieldProps = {
  column: Column
  at: string
  label: string
  typed: Typed
  faults: ReadonlyMap<string, string>
  sayer: Sayer
}

function CellField({ column: { field }, at, label, typed, faults, sayer }: CellFieldProps) {
  const { shape, name } = field
  const error = faults.get(at)
  const shared = {
    id: at,
    name: at,
    'aria-label': label,
    'aria-invalid': error ? true : undefined,
    'aria-describedby': error ? `${at}-error` : undefined,
  } as const
  return (
    <>
      {shape.kind === 'choice' || shape.kind === 'yes-no' ? (
        <select {...shared} defaultValue={typed[at]?.[0] ?? ''} className={`${controlClass('medium')} min-w-[8rem]`}>
          <option value="">{sayer.text.choose}</option>
          {optionsOf(shape, sayer).map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      ) : shape.kind === 'list' && shape.of.kind === 'choice' ? (
        <div id={at} tabIndex={-1} role="group" aria-label={label}>
          {optionsOf(shape.of, sayer).map((option) => (
            <CheckField
              key={option.value}
              name={at}
              id={`${at}-${option.value}`}
              value={option.value}
              label={option.label}
              defaultChecked={typed[at]?.includes(option.value) ?? false}
            />
          ))}
        </div>
      ) : shape.kind === 'list' || shape.kind === 'other' ? (
        <textarea
          {...shared}
          rows={2}
          defaultValue={typed[at]?.[0]}
          className={`${controlClass('medium')} min-w-[10rem]`}
        />
      ) : (
        <input
          {...shared}
          type="text"
          inputMode={shape.kind === 'number' ? 'decimal' : undefined}
          autoComplete="off"
          defaultValue={typed[at]?.[0]}
          className={`${controlClass('short')} ${sayer.own.screenUnit(name) || shape.kind === 'number' ? 'min-w-[5.5rem]' : 'min-w-[8rem]'}`}
        />
      )}
      {error ? <ErrorLine id={`${at}-error`} text={error} /> : null}
    </>
  )
}
