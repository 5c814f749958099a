import type { Words } from '../words/words'
import { FormRadioGroup } from './form-radio-group'
import { FormSelect } from './form-select'

export type SettingsChoices = {
  timeZones: readonly string[]
  locales: readonly (keyof Words['people']['settings']['locales'])[]
  currencies: readonly string[]
  regions: readonly (keyof Words['people']['settings']['regions'])[]
  massUnits: readonly (keyof Words['people']['settings']['massUnitNames'])[]
  temperatureUnits: readonly (keyof Words['people']['settings']['temperatureUnitNames'])[]
}

export type SettingsFieldsProps = {
  words: Words['people']['settings']
  choices: SettingsChoices
  present: {
    timeZone: string
    locale: string
    currency: string
    region: string
    massUnits: string
    temperatureUnits: string
  }
}

/** How a bakery counts, weighs and tells the time: the fields of the first set-up and of the settings page. */
export function SettingsFields({ words, choices, present }: SettingsFieldsProps) {
  return (
    <>
      <FormSelect
        name="timeZone"
        label={words.timeZone}
        options={choices.timeZones.map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') }))}
        defaultValue={present.timeZone}
        required
      />
      <FormSelect
        name="locale"
        label={words.locale}
        options={choices.locales.map((locale) => ({ value: locale, label: words.locales[locale] }))}
        defaultValue={present.locale}
        required
      />
      <FormSelect
        name="currency"
        label={words.currency}
        hint={words.currencyHint}
        options={choices.currencies.map((currency) => ({ value: currency, label: currency }))}
        defaultValue={present.currency}
        width="short"
        required
      />
      <FormRadioGroup
        name="region"
        label={words.region}
        hint={words.regionHint}
        options={choices.regions.map((region) => ({ value: region, label: words.regions[region] }))}
        defaultValue={present.region}
        required
      />
      <FormRadioGroup
        name="massUnits"
        label={words.massUnits}
        options={choices.massUnits.map((units) => ({ value: units, label: words.massUnitNames[units] }))}
        defaultValue={present.massUnits}
        required
      />
      <FormRadioGroup
        name="temperatureUnits"
        label={words.temperatureUnits}
        options={choices.temperatureUnits.map((units) => ({ value: units, label: words.temperatureUnitNames[units] }))}
        defaultValue={present.temperatureUnits}
        required
      />
    </>
  )
}
