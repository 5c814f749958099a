import { rulesOf } from '@/lib/ui/rules-of'
import { draftVersionInput } from '@/lib/kitchen/formulas/draft-version.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { SubmitButton } from '@/lib/ui/submit-button'
import type { Words } from '@/lib/words/words'
import { draftFrom } from './actions'

/** Starts a new draft from this version, with its reason. */
export function DraftForm({ fromVersionId, text }: { fromVersionId: string; text: Words['formulas']['sheet'] }) {
  return (
    <ActionForm rules={rulesOf(draftVersionInput)} action={draftFrom.bind(null, fromVersionId)} idPrefix="draft-">
      <FormTextArea name="reason" label={text.draftReason} hint={text.draftReasonHint} rows={2} />
      <div className="mt-4">
        <SubmitButton tone="plain">{text.draftGo}</SubmitButton>
      </div>
    </ActionForm>
  )
}
