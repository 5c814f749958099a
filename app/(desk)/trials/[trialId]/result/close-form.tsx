import { rulesOf } from '@/lib/ui/rules-of'
import { closeTrialInput } from '@/lib/kitchen/results/close-trial.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import { close } from './actions'
import { gapSentences } from './gap-sentences'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/** Ends the baking: closes a trial whose doughs are all in, or stops one early, for a reason. */
export function CloseForm({ result, bakery, forms }: { result: ShownResult; bakery: ShownBakery; forms: ResultForms }) {
  const { text, language } = forms
  const { id, revision } = result.trial
  const { open } = result.analysis
  const gaps = gapSentences(result, bakery, forms)
  const gapList =
    gaps.length > 0 ? (
      <div className="mb-4 max-w-measure">
        <p className="mb-2 font-semibold text-warn">{text.closeGaps}</p>
        <ul className="list-disc pl-5">
          {gaps.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
    ) : null
  if (open === 0) {
    return (
      <Section id="close" title={text.close} note={text.closeNoteNone} screenOnly>
        <ActionForm rules={rulesOf(closeTrialInput)} action={close.bind(null, id, revision, false)}>
          {gapList}
          {gapList ? (
            <FieldStack>
              <FormTextArea name="reason" label={text.closeGapsReason} hint={text.closeGapsHint} required />
            </FieldStack>
          ) : null}
          <ActionRow>
            <SubmitButton tone={gapList ? 'stop-quiet' : 'go'}>
              {gapList ? text.closeAllTheSame : text.closeGo}
            </SubmitButton>
          </ActionRow>
        </ActionForm>
      </Section>
    )
  }
  return (
    <Section id="close" title={text.close} note={say(text.closeNote, language, { count: open })} screenOnly>
      <ActionForm rules={rulesOf(closeTrialInput)} action={close.bind(null, id, revision, true)}>
        {gapList}
        <FieldStack>
          <FormTextArea name="reason" label={text.closeReason} hint={text.closeReasonHint} required />
        </FieldStack>
        <ActionRow>
          <SubmitButton tone="stop-quiet">{text.closeEarly}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </Section>
  )
}
