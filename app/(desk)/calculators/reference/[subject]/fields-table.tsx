import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import type { FieldShape, Shape } from '@/lib/kitchen/calculators/shape-of-schema'
import { kindWords } from '@/lib/kitchen/calculators/kind-words'
import { listOf } from '@/lib/words/list-of'
import type { Sayer } from '../../sayer'

type FieldsTableProps = { title: string; caption: string; fields: readonly FieldShape[]; sayer: Sayer }

/** The fields of a question or an answer: what each is called here and in JSON, its unit and what it is. */
export function FieldsTable({ title, caption, fields, sayer }: FieldsTableProps) {
  const { reference: text } = sayer.text
  return (
    <div className="mt-3">
      <h3 className="text-small text-ink-2">{title}</h3>
      <SheetTable
        caption={caption}
        captionHidden
        columns={[
          { key: 'field', label: text.field },
          { key: 'json', label: text.inJson },
          { key: 'unit', label: text.unit },
          { key: 'kind', label: text.kind },
        ]}
      >
        {rowsOf(fields).map(({ field, path, depth }) => (
          <tr key={path}>
            <th scope="row" className={indents[Math.min(depth, indents.length - 1)]}>
              {sayer.own.field(field.name)}
            </th>
            <Cell>
              <code translate="no">{path}</code>
            </Cell>
            <Cell>{sayer.own.unit(field.name)}</Cell>
            <Cell>{listOf(kindWords(field, sayer.language), sayer.language)}</Cell>
          </tr>
        ))}
      </SheetTable>
    </div>
  )
}

const indents = [undefined, 'pl-4!', 'pl-8!', 'pl-12!'] as const

type Row = { field: FieldShape; path: string; depth: number }

/** Every field, and below a group or a list of lines the fields of it: `lines[].massG`. */
function rowsOf(fields: readonly FieldShape[], before = '', depth = 0): Row[] {
  return fields.flatMap((field) => {
    const path = `${before}${field.name}`
    const { inside, marks } = insideOf(field.shape)
    return [{ field, path, depth }, ...rowsOf(inside, `${path}${marks}.`, depth + 1)]
  })
}

function insideOf(shape: Shape, marks = ''): { inside: readonly FieldShape[]; marks: string } {
  if (shape.kind === 'list') return insideOf(shape.of, `${marks}[]`)
  return { inside: shape.kind === 'group' ? shape.fields : [], marks }
}
