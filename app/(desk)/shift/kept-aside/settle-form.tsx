import { rulesOf } from '@/lib/ui/rules-of'
import { settleEntryInput } from '@/lib/kitchen/readings/settle-entry.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FieldStack } from '@/lib/ui/field-stack'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorField } from '@/lib/ui/floor-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { settle } from './actions'
import { keptAsideAnchor } from './kept-aside-anchor'
import type { KeptEntryShown } from './kept-entry'

type SettleFormProps = { entry: KeptEntryShown; words: Words['shift']['keptAside']; language: Language }

/** What becomes of an entry, and why. Nothing is chosen beforehand, because neither way can be taken back. */
export function SettleForm({ entry, words: text, language }: SettleFormProps) {
  const { entered, standing, bar } = entry
  const { code } = entry.batch
  return (
    <div className="mt-4 print:hidden">
      <ActionForm
        rules={rulesOf(settleEntryInput)}
        action={settle.bind(null, entry.entryId, entry.hash, standing?.id ?? null)}
        idPrefix={`${keptAsideAnchor(entry)}-`}
      >
        {bar === null ? null : <input type="hidden" name="take" value="no" />}
        <FieldStack>
          {bar === null ? (
            <FormRadioGroup
              name="take"
              label={text.choice}
              required
              options={[
                { value: 'yes', label: text.take, hint: standing === null ? text.takeFree : text.takeOver },
                { value: 'no', label: text.leave, hint: text.leaveHint },
              ]}
            />
          ) : null}
          <FloorField name="reason" type="text" label={text.reason} hint={text.reasonHint} />
        </FieldStack>
        <div className="mt-4">
          {bar === null && entered ? (
            <FloorButton
              tone="plain"
              fullLabel={say(text.settleFull, language, { code, value: withUnit(entered.value, entered.unit) })}
            >
              {text.settle}
            </FloorButton>
          ) : (
            <FloorButton tone="plain" fullLabel={say(text.leaveFull, language, { code })}>
              {text.leave}
            </FloorButton>
          )}
        </div>
      </ActionForm>
    </div>
  )
}
