import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { proposeAmendmentInput } from '@/lib/kitchen/amendments/propose-amendment.input'
import { proposeNotCountingInput } from '@/lib/kitchen/amendments/propose-not-counting.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FieldPair } from '@/lib/ui/field-pair'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormSelect } from '@/lib/ui/form-select'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { measureName } from '@/lib/words/measure-name'
import { sayName } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownBakery } from '../shown-result'
import { propose, proposeOut } from './actions'
import type { ShownAmendments } from './shown-amendments'

/** Another value for what was closed, a reading that was missing, a dough that should not count. */
export function ProposeForms({
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
  const words = wordsIn(language)
  const { amendments: text } = words
  if (!amended.mayPropose) return null
  const doughs = amended.doughs.map(({ id, code }) => ({ value: id, label: code }))
  const counting = amended.doughs
    .filter(({ state }) => !isOutState(state))
    .map(({ id, code }) => ({ value: id, label: code }))
  const measures = amended.measures.map(({ id, unit, ...measure }) => ({
    value: id,
    label: sayName(text.measureOption, language, { name: measureName(measure, words), unit }),
  }))
  return (
    <Section id="propose" title={text.propose} note={text.proposeNote} screenOnly>
      <h3 className="mb-3 font-bold">{text.proposeReading}</h3>
      <ActionForm
        rules={rulesOf(proposeAmendmentInput)}
        action={propose.bind(null, trialId, bakery.locale)}
        idPrefix="amend-"
      >
        <FieldStack>
          <FormRadioGroup
            name="what"
            label={text.what}
            required
            options={[
              { value: 'another', label: text.another },
              { value: 'missing', label: text.missing },
            ]}
          />
          <FieldPair>
            <FormSelect name="doughId" label={text.dough} options={doughs} emptyLabel={text.choose} width="short" />
            <FormSelect name="measureId" label={text.measure} options={measures} emptyLabel={text.choose} />
          </FieldPair>
          <FieldPair>
            <FormField
              name="piece"
              type="number"
              label={text.piece}
              width="short"
              hint={text.pieceHint}
              optionalWord={words.desk.optional}
            />
            <FormField
              name="repeat"
              type="number"
              label={text.repeatNumber}
              width="short"
              defaultValue="1"
              hint={text.repeatHint}
            />
          </FieldPair>
          <FormField name="value" type="number" label={text.value} width="short" hint={text.valueHint} />
          <FormTextArea name="reason" label={text.reason} rows={2} />
        </FieldStack>
        <div className="mt-4">
          <SubmitButton tone="plain">{text.proposeGo}</SubmitButton>
        </div>
      </ActionForm>
      <h3 className="mt-8 mb-3 font-bold">{text.proposeDough}</h3>
      <ActionForm
        rules={rulesOf(proposeNotCountingInput)}
        action={proposeOut.bind(null, trialId)}
        idPrefix="amend-dough-"
      >
        <FieldStack>
          <FormSelect name="doughId" label={text.dough} options={counting} emptyLabel={text.choose} width="short" />
          <FormTextArea name="reason" label={text.reason} rows={2} />
        </FieldStack>
        <div className="mt-4">
          <SubmitButton tone="plain">{text.proposeDoughGo}</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  )
}
