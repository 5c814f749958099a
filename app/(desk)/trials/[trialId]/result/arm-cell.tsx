import { ArmMark } from '@/lib/ui/arm-mark'
import { Cell } from '@/lib/ui/cell'
import type { ResultForms } from './result-forms'

/** The cell that names the arm of its row. */
export function ArmCell({ arm, name, forms }: { arm: number; name: string | undefined; forms: ResultForms }) {
  return (
    <Cell head>
      <span className="flex min-w-short items-baseline gap-1.5">
        <ArmMark arm={forms.letter(arm)} />
        <span>{arm === 0 ? forms.text.control : name}</span>
      </span>
    </Cell>
  )
}
