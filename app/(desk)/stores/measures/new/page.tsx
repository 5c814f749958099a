import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getFormUnits } from '@/lib/kitchen/stores/get-form-units'
import { addMeasureInput } from '@/lib/kitchen/stores/add-measure.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SubmitButton } from '@/lib/ui/submit-button'
import { wordsIn } from '@/lib/words/words'
import { add } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).measures.add }
}

export default async function NewMeasurePage() {
  const language = await currentLanguage()
  const { measures: text, desk } = wordsIn(language)
  const { form } = text
  const { locale } = await ask(getFormUnits)
  const options = <Key extends string>(labels: Record<Key, string>) =>
    Object.entries<string>(labels).map(([value, label]) => ({ value, label }))
  return (
    <Sheet kicker={text.title} headline={form.headline} lead={form.lead}>
      <ActionForm rules={rulesOf(addMeasureInput)} action={add.bind(null, locale)}>
        <Section id="facts" title={form.facts}>
          <FieldStack>
            <FormField name="name" type="text" label={text.name} hint={form.nameHint} autoComplete="off" />
            <FormField
              name="unit"
              type="text"
              label={text.unit}
              hint={form.unitHint}
              width="short"
              autoComplete="off"
            />
            <FormField name="digits" type="number" range label={form.digits} width="short" defaultValue="0" />
            <FormRadioGroup name="level" label={form.level} options={options(text.levels)} defaultValue="piece" />
            <FormRadioGroup
              name="direction"
              label={form.direction}
              hint={form.directionHint}
              options={options(text.directions)}
              defaultValue="larger"
            />
            <FormField name="plausibleLeast" type="number" label={form.least} hint={form.rangeHint} width="short" />
            <FormField name="plausibleMost" type="number" label={form.most} width="short" />
            <FormField name="repeats" type="number" range label={form.repeats} width="short" defaultValue="1" />
            <FormField
              name="repeatLimit"
              type="number"
              label={form.limit}
              hint={form.limitHint}
              width="short"
              optionalWord={desk.optional}
            />
            <FormField name="method" type="text" label={form.method} hint={form.methodHint} autoComplete="off" />
            <FormField
              name="ageLeastH"
              type="number"
              label={form.ageLeast}
              hint={form.ageHint}
              unit="h"
              width="short"
              optionalWord={desk.optional}
            />
            <FormField
              name="ageMostH"
              type="number"
              label={form.ageMost}
              unit="h"
              width="short"
              optionalWord={desk.optional}
            />
          </FieldStack>
        </Section>
        <ActionRow>
          <SubmitButton tone="go">{form.go}</SubmitButton>
          <LinkButton tone="plain" href="/stores/measures">
            {form.back}
          </LinkButton>
        </ActionRow>
      </ActionForm>
    </Sheet>
  )
}
