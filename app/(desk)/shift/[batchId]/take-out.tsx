import { rulesOf } from '@/lib/ui/rules-of'
import { moveBatchInput } from '@/lib/kitchen/shifts/move-batch.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { FloorField } from '@/lib/ui/floor-field'
import { takeOut } from './actions'
import type { BatchPart } from './batch-view'

/** Two taps and a reason: a batch that is lost, or set aside. */
export function TakeOut({ batch, words: { out: text } }: BatchPart) {
  return (
    <div className="mt-9 border-t-2 border-rule print:hidden">
      <FloorDisclosure title={text.title}>
        <ActionForm
          rules={rulesOf(moveBatchInput)}
          action={takeOut.bind(null, batch.id, batch.revision)}
          idPrefix="out-"
        >
          <FloorField name="why" type="text" label={text.why} hint={text.hint} required />
          <div className="mt-4 flex flex-wrap gap-4">
            <FloorButton tone="stop" name="to" value="lost">
              {text.lost}
            </FloorButton>
            <FloorButton tone="stop" name="to" value="set_aside">
              {text.setAside}
            </FloorButton>
          </div>
        </ActionForm>
      </FloorDisclosure>
    </div>
  )
}
