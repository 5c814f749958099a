import { swapDoughsInput } from '@/lib/kitchen/repairs/swap-doughs.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FieldStack } from '@/lib/ui/field-stack'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorFold } from '@/lib/ui/floor-fold'
import { FloorField } from '@/lib/ui/floor-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { rulesOf } from '@/lib/ui/rules-of'
import { say } from '@/lib/words/say'
import { exchange } from './actions'
import type { BatchPart } from './batch-view'

/** Gives a batch that waits the place of another that waits on its mixing day. */
export function Exchange({ batch, words: { exchange: text }, language }: BatchPart) {
  if (batch.exchangeable.length === 0) return null
  return (
    <div className="print:hidden">
      <FloorFold title={text.title}>
        <p className="mb-3 max-w-measure">{text.note}</p>
        <ActionForm
          key={batch.turn}
          rules={rulesOf(swapDoughsInput)}
          action={exchange.bind(null, batch.id, batch.turn)}
          idPrefix="exchange-"
        >
          <FieldStack>
            <FormRadioGroup
              name="otherId"
              label={text.with}
              required
              options={batch.exchangeable.map(({ id, code, turn }) => ({
                value: id,
                label: say(text.choice, language, { code, place: turn }),
              }))}
            />
            <FloorField name="why" type="text" label={text.why} hint={text.whyHint} />
          </FieldStack>
          <div className="mt-4">
            <FloorButton tone="plain">{text.go}</FloorButton>
          </div>
        </ActionForm>
      </FloorFold>
    </div>
  )
}
