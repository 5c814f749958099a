import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import { close } from './actions'
import type { ResultForms } from './result-forms'
import type { ShownResult } from './shown-result'

/** Ends the baking: closes a trial whose doughs are all in, or stops one early, for a reason. */
export function CloseForm({ result, forms }: { result: ShownResult; forms: ResultForms }) {
  const { text, language } = forms
  const { id, revision } = result.trial
  const { open } = result.analysis
  if (open === 0) {
    return (
      <Section id="close" title={text.close} note={text.closeNoteNone} screenOnly>
        <ActionForm action={close.bind(null, id, revision, false)}>
          <ActionRow>
            <SubmitButton tone="go">{text.closeGo}</SubmitButton>
          </ActionRow>
        </ActionForm>
      </Section>
    )
  }
  return (
    <Section id="close" title={text.close} note={say(text.closeNote, language, { count: open })} screenOnly>
      <ActionForm action={close.bind(null, id, revision, true)}>
        <FieldStack>
          <FormTextArea name="reason" label={text.closeReason} hint={text.closeReasonHint} required maxLength={2000} />
        </FieldStack>
        <ActionRow>
          <SubmitButton tone="stop-quiet">{text.closeEarly}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </Section>
  )
}
