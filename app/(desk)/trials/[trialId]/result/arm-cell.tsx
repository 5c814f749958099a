import { ArmMark } from '@/lib/ui/arm-mark'
import { Cell } from '@/lib/ui/cell'
import type { ResultForms } from './result-forms'

type ArmCellProps = {
  arm: number
  name: string | undefined
  forms: ResultForms
  /** In a table with little room. */
  narrow?: boolean
}

/** The cell that names the arm of its row. */
export function ArmCell({ arm, name, forms, narrow = false }: ArmCellProps) {
  return (
    <Cell head>
      <span className={`flex items-baseline gap-1.5 ${narrow ? '' : 'min-w-short'}`}>
        <ArmMark arm={forms.letter(arm)} />
        <span>{arm === 0 ? forms.text.control : name}</span>
      </span>
    </Cell>
  )
}
