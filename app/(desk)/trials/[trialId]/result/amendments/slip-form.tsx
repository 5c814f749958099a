import { signSlipInput } from '@/lib/kitchen/amendments/sign-slip.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownBakery } from '../shown-result'
import { sign } from './actions'
import type { ShownAmendments } from './shown-amendments'

/** Where something was amended: the signatures that the first result rested on a slip, for those who may give one. */
export function SlipForm({
  amended,
  trialId,
  bakery,
  language,
}: {
  amended: ShownAmendments
  trialId: string
  bakery: ShownBakery
  language: Language
}) {
  const { amendments: text } = wordsIn(language)
  const { slip } = amended
  if (!slip || slip.isSigned || amended.fault) return null
  const { maySign, needs, signatures, amendedHash } = slip
  if (!maySign && signatures.length === 0) return null
  const note = needs.includes('alone')
    ? text.slipNoteAlone
    : needs.includes('witness')
      ? text.slipNoteWitness
      : text.slipNote
  return (
    <Section id="slip" title={text.slip} note={note} screenOnly>
      {signatures.map(({ as, by, at, reason }) => (
        <p key={as} className="mb-3 max-w-measure">
          {say(text.slipWaits, language, { who: by, at: formatDateTime(at, bakery), reason })}
        </p>
      ))}
      {maySign ? (
        <ActionForm rules={rulesOf(signSlipInput)} action={sign.bind(null, trialId, amendedHash)} idPrefix="slip-">
          <FormTextArea name="reason" label={text.slipReason} rows={2} />
          <div className="mt-4">
            <SubmitButton tone="stop-quiet">{text.slipGo}</SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </Section>
  )
}
