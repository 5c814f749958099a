import { endLotInput, lotEnd } from '@/lib/kitchen/stores/end-lot.input'
import { receiveLotInput } from '@/lib/kitchen/stores/receive-lot.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormDone } from '@/lib/ui/form-done'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormSelect } from '@/lib/ui/form-select'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDay } from '@/lib/words/format/day'
import { sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { end, receive } from './actions'

type Shared = { bakery: { locale: string }; words: Pick<Words, 'lots' | 'desk'> }

/** A delivery, as its label and its paper say. */
export function ReceiveLotForm({
  ingredientId,
  today,
  bakery,
  words,
}: Shared & { ingredientId: string; today: string }) {
  const { lots: text } = words
  return (
    <Section id="receive-lot" title={text.receive} note={text.receiveNote} screenOnly>
      <ActionForm
        rules={rulesOf(receiveLotInput)}
        action={receive.bind(null, ingredientId, bakery.locale)}
        idPrefix="lot-"
      >
        <FormDone word={words.desk.done} text={text.receivedDone} />
        <FieldStack>
          <FormField name="code" type="text" label={text.codeField} hint={text.codeHint} autoComplete="off" />
          <FormField name="receivedOn" type="date" label={text.receivedField} width="medium" defaultValue={today} />
          <FormField
            name="bestBefore"
            type="date"
            label={text.bestBeforeField}
            hint={text.bestBeforeHint}
            width="medium"
          />
          <FormField
            name="strength.of"
            type="text"
            label={text.strengthOfField}
            hint={text.strengthOfHint}
            autoComplete="off"
          />
          <FormField name="strength.value" type="number" label={text.strengthField} width="short" />
          <FormField
            name="strength.unit"
            type="text"
            label={text.strengthUnitField}
            hint={text.strengthUnitHint}
            width="medium"
            autoComplete="off"
          />
          <FormTextArea name="note" label={text.noteField} hint={text.noteHint} />
        </FieldStack>
        <ActionRow>
          <SubmitButton tone="go">{text.receiveGo}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </Section>
  )
}

/** Ends one of the lots that stand on the page. */
export function EndLotForm({
  rows,
  toConfirm,
  bakery,
  words,
  language,
}: Shared & {
  rows: readonly { id: string; code: string; receivedOn: string }[]
  toConfirm: readonly { id: string; code: string }[]
  language: Language
}) {
  const { lots: text } = words
  return (
    <Section id="end-lot" title={text.end} note={text.endNote} screenOnly>
      <ActionForm rules={rulesOf(endLotInput)} action={end} idPrefix="end-lot-">
        <FormDone word={words.desk.done} text={text.endDone} />
        <FieldStack>
          <FormSelect
            name="lotId"
            label={text.which}
            emptyLabel={text.whichEmpty}
            options={[
              ...rows.map(({ id, code, receivedOn }) => ({
                value: id,
                label: sayName(text.whichText, language, { code, day: formatDay(receivedOn, bakery.locale) }),
              })),
              ...toConfirm.map(({ id, code }) => ({
                value: id,
                label: sayName(text.whichToConfirm, language, { code }),
              })),
            ]}
          />
          <FormRadioGroup
            name="why"
            label={text.endWhy}
            options={lotEnd.options.map((why) => ({ value: why, label: text.ends[why] }))}
          />
        </FieldStack>
        <ActionRow>
          <SubmitButton tone="stop-quiet">{text.endGo}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </Section>
  )
}
