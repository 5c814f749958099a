import { rulesOf } from '@/lib/ui/rules-of'
import { draftChangeInput } from '@/lib/kitchen/decisions/draft-change.input'
import { keepFormulaInput } from '@/lib/kitchen/decisions/keep-formula.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import type { Words } from '@/lib/words/words'
import { change, keep } from './actions'

type DecideFormProps = { trialId: string; revision: number; text: Words['decisions']['decide'] }

/** Drafts the change from one of the doughs, each with what the trial showed of it. */
export function ChangeForm({
  trialId,
  revision,
  arms,
  text,
}: DecideFormProps & { arms: readonly { id: string; label: string; hint: string }[] }) {
  return (
    <Section id="change" title={text.change} note={text.changeNote} screenOnly>
      {arms.length === 0 ? (
        <p className="max-w-measure">{text.noArm}</p>
      ) : (
        <ActionForm rules={rulesOf(draftChangeInput)} action={change.bind(null, trialId, revision)} idPrefix="change-">
          <FieldStack>
            <FormRadioGroup
              name="armId"
              label={text.arm}
              options={arms.map(({ id, label, hint }) => ({ value: id, label, hint }))}
            />
            <FormTextArea name="reason" label={text.reason} hint={text.reasonHint} />
          </FieldStack>
          <div className="mt-6">
            <SubmitButton tone="go">{text.changeGo}</SubmitButton>
          </div>
        </ActionForm>
      )}
    </Section>
  )
}

/** Leaves the formula as it is, for a reason. */
export function KeepForm({ trialId, revision, text }: DecideFormProps) {
  return (
    <Section id="keep" title={text.keep} note={text.keepNote} screenOnly>
      <ActionForm rules={rulesOf(keepFormulaInput)} action={keep.bind(null, trialId, revision)} idPrefix="keep-">
        <FieldStack>
          <FormTextArea name="reason" label={text.reason} hint={text.keepReasonHint} />
        </FieldStack>
        <div className="mt-6">
          <SubmitButton tone="plain">{text.keepGo}</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  )
}
