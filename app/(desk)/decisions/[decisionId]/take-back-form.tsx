import { rulesOf } from '@/lib/ui/rules-of'
import { takeBackInput } from '@/lib/kitchen/decisions/take-back.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import type { Words } from '@/lib/words/words'
import { takeItBack } from './actions'
import type { DecisionSeen } from './decision-seen'

/** Takes a decision back, for a reason. */
export function TakeBackForm({
  decision,
  text,
}: {
  decision: Pick<DecisionSeen, 'id' | 'revision' | 'outcome'>
  text: Words['decisions']
}) {
  return (
    <Section
      id="take-back"
      title={text.takeBack}
      note={decision.outcome === 'keep' ? text.takeBackNoteKept : text.takeBackNote}
      screenOnly
    >
      <ActionForm
        rules={rulesOf(takeBackInput)}
        action={takeItBack.bind(null, decision.id, decision.revision)}
        idPrefix="back-"
      >
        <FormTextArea name="reason" label={text.takeBackReason} rows={2} />
        <div className="mt-4">
          <SubmitButton tone="stop-quiet">{text.takeBackGo}</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  )
}
