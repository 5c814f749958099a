import { textOf } from './text-of'

/** How a bakery counts, weighs and tells the time, as it was typed into `SettingsFields`. */
export function settingsOf(form: FormData) {
  return {
    timeZone: textOf(form, 'timeZone'),
    locale: textOf(form, 'locale'),
    currency: textOf(form, 'currency'),
    region: textOf(form, 'region'),
    massUnits: textOf(form, 'massUnits'),
    temperatureUnits: textOf(form, 'temperatureUnits'),
  }
}
