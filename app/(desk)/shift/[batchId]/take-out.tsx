import { rulesOf } from '@/lib/ui/rules-of'
import { moveBatchInput } from '@/lib/kitchen/shifts/move-batch.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorFold } from '@/lib/ui/floor-fold'
import { FloorField } from '@/lib/ui/floor-field'
import { takeOut } from './actions'
import type { BatchPart } from './batch-view'

/**
 * Two taps and a reason: a batch that is not baked while it waits, lost or set aside from then on. Once what decides was
 * read of it, and nothing was noted before, it says why neither is possible and what can be done.
 */
export function TakeOut({ batch, words: { out: text } }: BatchPart) {
  const waits = batch.state === 'waiting'
  return (
    <div className="print:hidden">
      <FloorFold title={waits ? text.notBakedTitle : text.title}>
        {batch.whyNotOut ? (
          <p className="max-w-measure">{text.readAlready}</p>
        ) : (
          <ActionForm
            rules={rulesOf(moveBatchInput)}
            action={takeOut.bind(null, batch.id, batch.revision)}
            idPrefix="out-"
          >
            <FloorField
              name="why"
              type="text"
              label={waits ? text.notBakedWhy : text.why}
              hint={waits ? text.notBakedHint : text.hint}
              required
            />
            <div className="mt-4 flex flex-wrap gap-4">
              {waits ? (
                <FloorButton tone="stop" name="to" value="not_baked">
                  {text.notBaked}
                </FloorButton>
              ) : (
                <>
                  <FloorButton tone="stop" name="to" value="lost">
                    {text.lost}
                  </FloorButton>
                  <FloorButton tone="stop" name="to" value="set_aside">
                    {text.setAside}
                  </FloorButton>
                </>
              )}
            </div>
          </ActionForm>
        )}
      </FloorFold>
    </div>
  )
}
