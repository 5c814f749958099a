import { PageLink } from '@/lib/ui/page-link'
import { Fragment, type ComponentProps } from 'react'
import { Cell } from '@/lib/ui/cell'
import { GroupRow } from '@/lib/ui/group-row'
import { SheetTable } from '@/lib/ui/sheet-table'
import type { MassUnits } from '@/lib/words/format/mass'
import type { TemperatureUnits } from '@/lib/words/format/temperature-difference'
import type { Language, Words } from '@/lib/words/words'
import { equipmentEntries, type EquipmentRow } from './equipment-entries'

type EquipmentTableProps = {
  /** In the order of their kinds. */
  equipment: readonly (EquipmentRow & { id: string })[]
  caption: string
  bakery: { locale: string; massUnits: MassUnits; temperatureUnits: TemperatureUnits }
  text: Words['stores']['equipment']
  language: Language
}

/** Equipment under the heads of its kinds. */
export function EquipmentTable({ equipment, caption, bakery, text, language }: EquipmentTableProps) {
  const columns: ComponentProps<typeof SheetTable>['columns'] = [
    { key: 'name', label: text.name },
    { key: 'can', label: text.can },
    { key: 'note', label: text.noteColumn },
  ]
  return (
    <SheetTable caption={caption} captionHidden columns={columns}>
      {equipment.map((one, index) => (
        <Fragment key={one.id}>
          {equipment[index - 1]?.kind === one.kind ? null : (
            <GroupRow label={text.kinds[one.kind]} columns={columns.length} />
          )}
          <tr>
            <Cell head>
              <PageLink href={`/stores/equipment/${one.id}`}>{one.name}</PageLink>
            </Cell>
            <Cell>
              <span className="flex flex-wrap gap-x-6">
                {equipmentEntries(one, bakery, text, language).map(({ term, detail }) => (
                  <span key={term}>
                    <span className="text-small text-ink-2">{term}</span> {detail}
                  </span>
                ))}
              </span>
            </Cell>
            <Cell>{one.note}</Cell>
          </tr>
        </Fragment>
      ))}
    </SheetTable>
  )
}
