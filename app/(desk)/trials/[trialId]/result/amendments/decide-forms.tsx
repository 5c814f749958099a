import { decideAmendmentInput } from '@/lib/kitchen/amendments/decide-amendment.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownBakery } from '../shown-result'
import { decide } from './actions'
import { sayAmendment, sayLate } from './say-amendment'
import type { ShownAmendment, ShownAmendments } from './shown-amendments'

/** The amendments that wait for the yes or no of whoever looks. Nothing is chosen beforehand: neither can be taken back. */
export function DecideForms({
  amended,
  bakery,
  language,
}: {
  amended: ShownAmendments
  bakery: ShownBakery
  language: Language
}) {
  const { amendments: text } = wordsIn(language)
  const open = amended.amendments.filter(({ mayDecide }) => mayDecide !== null)
  const [first] = open
  if (!first) return null
  return (
    <Section id="amendments-decide" title={text.decide} note={text.decideNote} screenOnly>
      {first.mayDecide === 'witness' ? <p className="mb-3 max-w-measure">{text.decideWitness}</p> : null}
      {first.mayDecide === 'alone' ? <p className="mb-3 max-w-measure">{text.decideAlone}</p> : null}
      {open.map((amendment) => (
        <DecideForm key={amendment.id} amendment={amendment} bakery={bakery} language={language} />
      ))}
    </Section>
  )
}

function DecideForm({
  amendment,
  bakery,
  language,
}: {
  amendment: ShownAmendment
  bakery: ShownBakery
  language: Language
}) {
  const { amendments: text } = wordsIn(language)
  const { id, hash, change, by, at, reason } = amendment
  const said = sayAmendment(amendment, language)
  const titleId = `decide-${id}-title`
  const { code } = change.dough
  return (
    <article
      aria-labelledby={titleId}
      className="mt-6 border-t border-rule pt-4 first-of-type:mt-0 first-of-type:border-t-0 first-of-type:pt-0"
    >
      <h3 id={titleId} className="font-bold">
        {change.kind === 'reading'
          ? say(text.decideReading, language, { code, name: said.name, place: said.place })
          : say(text.decideDough, language, { code })}
      </h3>
      <p className="max-w-measure">
        {paragraph(
          [
            change.kind === 'reading'
              ? change.old
                ? say(text.decideReadingText, language, { old: said.old, new: said.new })
                : say(text.decideMissingText, language, { new: said.new })
              : null,
            ...sayLate(amendment, bakery, language),
            say(text.decideWho, language, { who: by, at: formatDateTime(at, bakery) }),
          ],
          language,
        )}
      </p>
      {reason === null ? null : <p className="max-w-measure">{reason}</p>}
      <div className="mt-4">
        <ActionForm
          rules={rulesOf(decideAmendmentInput)}
          action={decide.bind(null, id, hash)}
          idPrefix={`decide-${id}-`}
        >
          <FieldStack>
            <FormRadioGroup
              name="accept"
              label={text.choice}
              required
              options={[
                { value: 'yes', label: text.yes, hint: text.yesHint },
                { value: 'no', label: text.no, hint: text.noHint },
              ]}
            />
            <FormTextArea name="note" label={text.decideWhy} hint={text.decideWhyHint} rows={2} />
          </FieldStack>
          <div className="mt-4">
            <SubmitButton tone="plain">{text.decideGo}</SubmitButton>
          </div>
        </ActionForm>
      </div>
    </article>
  )
}
