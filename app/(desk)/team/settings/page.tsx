import { languageOptions } from '@/lib/ui/language-options'
import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { settingsChoices } from '@/lib/ui/settings-choices'
import { getSettings } from '@/lib/kitchen/people/get-settings'
import { changeSettingsInput } from '@/lib/kitchen/people/change-settings.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormCheck } from '@/lib/ui/form-check'
import { FormDone } from '@/lib/ui/form-done'
import { FormField } from '@/lib/ui/form-field'
import { FormSelect } from '@/lib/ui/form-select'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { SettingsFields } from '@/lib/ui/settings-fields'
import { Sheet } from '@/lib/ui/sheet'
import { SubmitButton } from '@/lib/ui/submit-button'
import { plainNumber } from '@/lib/words/format/plain-number'
import { wordsIn } from '@/lib/words/words'
import { changeSettings } from './actions'
import { dayTurnEntries } from './day-turn-entries'
import { LooksFields } from './looks-fields'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).people.settings.title }
}

export default async function SettingsPage() {
  const { people: words, desk } = wordsIn(await currentLanguage())
  const { settings: text } = words
  const settings = await ask(getSettings)
  return (
    <Sheet kicker={text.title} headline={text.headline}>
      <Section id="bakery" title={text.form}>
        <ActionForm
          rules={rulesOf(changeSettingsInput)}
          action={changeSettings.bind(null, settings.revision, settings.locale)}
        >
          <FormDone word={desk.done} text={text.kept} />
          <FieldStack>
            <FormField
              name="bakeryName"
              type="text"
              label={text.bakeryName}
              defaultValue={settings.name}
              autoComplete="off"
            />
            <FormSelect
              name="language"
              label={text.language}
              hint={text.languageHint}
              emptyLabel={text.languageOfBrowser}
              options={languageOptions(words)}
              defaultValue={settings.language ?? ''}
            />
            <SettingsFields words={text} choices={settingsChoices()} present={settings} />
            <FormSelect
              name="dayTurnsAtH"
              label={text.dayTurns}
              hint={text.dayTurnsHint}
              options={dayTurnEntries(settings.locale, text)}
              defaultValue={settings.dayTurnsAtH.toString()}
              width="medium"
              required
            />
            <FormField
              name="stationIdleMin"
              type="number"
              label={text.stationIdle}
              hint={text.stationIdleHint}
              unit="min"
              range
              defaultValue={plainNumber(settings.stationIdleMin, settings)}
              width="short"
            />
            <FormField
              name="pinLastsH"
              type="number"
              label={text.pinLasts}
              hint={text.pinLastsHint}
              unit="h"
              range
              defaultValue={plainNumber(settings.pinLastsH, settings)}
              width="short"
            />
            <LooksFields looks={settings} locale={settings.locale} words={text.looks} />
            <FormCheck
              name="worksAlone"
              label={text.worksAlone}
              hint={text.worksAloneHint}
              defaultChecked={settings.worksAlone}
            />
            <FormField
              name="costChangeLimitPct"
              type="number"
              label={text.costChangeLimit}
              hint={text.costChangeLimitHint}
              unit="%"
              range
              defaultValue={plainNumber(settings.costChangeLimitPct, settings)}
              width="short"
            />
          </FieldStack>
          <ActionRow>
            <SubmitButton tone="go">{text.go}</SubmitButton>
            <LinkButton tone="plain" href="/team">
              {words.person.back}
            </LinkButton>
          </ActionRow>
        </ActionForm>
      </Section>
    </Sheet>
  )
}
