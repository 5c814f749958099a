import { ActionForm } from '@/lib/ui/action-form'
import { SubmitButton } from '@/lib/ui/submit-button'
import type { Words } from '@/lib/words/words'
import { discard } from './actions'

/** Drops a draft that nobody has signed. */
export function DiscardForm({
  versionId,
  revision,
  text,
}: {
  versionId: string
  revision: number
  text: Words['formulas']['sheet']
}) {
  return (
    <ActionForm action={discard.bind(null, versionId, revision)} idPrefix="discard-">
      <SubmitButton tone="stop-quiet">{text.discardGo}</SubmitButton>
    </ActionForm>
  )
}
