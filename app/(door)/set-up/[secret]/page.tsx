import { rulesOf } from '@/lib/ui/rules-of'
import { askOpenly } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { settingsChoices } from '@/lib/ui/settings-choices'
import { getFirstRun } from '@/lib/kitchen/people/get-first-run'
import { setUpBakeryInput } from '@/lib/kitchen/people/set-up-bakery.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { ErrorSheet } from '@/lib/ui/error-sheet'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { PlainPage } from '@/lib/ui/plain-page'
import { Section } from '@/lib/ui/section'
import { SettingsFields } from '@/lib/ui/settings-fields'
import { SubmitButton } from '@/lib/ui/submit-button'
import { wordsIn } from '@/lib/words/words'
import { setUp } from './actions'

export default async function SetUpPage({ params }: { params: Promise<{ secret: string }> }) {
  const { secret } = await params
  const words = wordsIn(await currentLanguage())
  const { setUp: text } = words.door
  if (!(await askOpenly(getFirstRun, { secret }))) {
    return (
      <ErrorSheet
        productName={words.desk.product}
        headline={text.deadTitle}
        happened={text.dead}
        todo={text.deadTodo}
      />
    )
  }
  return (
    <PlainPage productName={words.desk.product} headline={text.title} lead={text.lead}>
      <ActionForm rules={rulesOf(setUpBakeryInput)} action={setUp.bind(null, secret)}>
        <Section id="you" title={text.you}>
          <FieldStack>
            <FormField name="name" type="text" label={text.name} autoComplete="name" />
            <FormField name="email" type="email" label={text.email} hint={text.emailHint} autoComplete="username" />
            <FormField
              name="password"
              type="password"
              label={text.password}
              hint={text.passwordHint}
              autoComplete="new-password"
            />
          </FieldStack>
        </Section>
        <Section id="bakery" title={text.bakery}>
          <FieldStack>
            <FormField name="bakeryName" type="text" label={text.bakeryName} autoComplete="organization" />
            <SettingsFields
              words={words.people.settings}
              choices={settingsChoices()}
              present={{
                timeZone: 'Europe/London',
                locale: 'en-GB',
                currency: 'EUR',
                region: 'eu',
                massUnits: 'metric',
                temperatureUnits: 'celsius',
              }}
            />
          </FieldStack>
        </Section>
        <ActionRow>
          <SubmitButton tone="go">{text.go}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </PlainPage>
  )
}
