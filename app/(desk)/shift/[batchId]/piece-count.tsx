import { rulesOf } from '@/lib/ui/rules-of'
import { countPiecesInput } from '@/lib/kitchen/shifts/count-pieces.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorField } from '@/lib/ui/floor-field'
import { FormDone } from '@/lib/ui/form-done'
import { Section } from '@/lib/ui/section'
import { count } from './actions'
import type { BatchPart } from './batch-view'

/** How many pieces came out, and how many of them are good. */
export function PieceCount({ batch, words: { pieces: text } }: BatchPart) {
  return (
    <Section id="pieces" title={text.title} screenOnly>
      <ActionForm
        rules={rulesOf(countPiecesInput)}
        action={count.bind(null, batch.id, batch.revision)}
        idPrefix="count-"
      >
        <div className="flex max-w-column flex-wrap items-end gap-4">
          <div className="w-36">
            <FloorField name="piecesMade" type="count" label={text.made} defaultValue={batch.piecesMade?.toString()} />
          </div>
          <div className="w-36">
            <FloorField name="piecesGood" type="count" label={text.good} defaultValue={batch.piecesGood?.toString()} />
          </div>
          <FloorButton tone="plain">{text.keep}</FloorButton>
        </div>
        <FormDone word={text.keptWord} text={text.kept} />
      </ActionForm>
    </Section>
  )
}
