import { ArmMark } from '@/lib/ui/arm-mark'
import { Cell } from '@/lib/ui/cell'
import type { ResultForms } from './result-forms'

/** The cell that names the arm of its row. */
export function ArmCell({ arm, name, forms }: { arm: number; name: string | undefined; forms: ResultForms }) {
  return (
    <Cell head>
      <ArmMark arm={forms.letter(arm)} /> {arm === 0 ? forms.text.control : name}
    </Cell>
  )
}
