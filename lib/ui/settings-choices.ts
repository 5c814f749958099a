import 'server-only'
import { bakerySettings } from '../kitchen/people/bakery-settings.input'
import type { SettingsChoices } from './settings-fields'

/** What can be chosen for a bakery's settings: the command's own lists, and every time zone there is. */
export function settingsChoices(): SettingsChoices {
  const { locale, currency, region, massUnits, temperatureUnits } = bakerySettings.shape
  return {
    timeZones: [...Intl.supportedValuesOf('timeZone'), 'UTC'],
    locales: locale.options,
    currencies: currency.options,
    regions: region.options,
    massUnits: massUnits.options,
    temperatureUnits: temperatureUnits.options,
  }
}
