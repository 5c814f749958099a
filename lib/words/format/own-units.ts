import type { MassUnits } from './mass'
import type { TemperatureUnits } from './temperature-difference'

/** In which marks and units a bakery writes and types its quantities. */
export type OwnUnits = { locale: string; massUnits: MassUnits; temperatureUnits: TemperatureUnits }

/**
 * Only these of a bakery's settings, to be handed to the browser and bound to a form, so that a number means what stood
 * beside its field.
 */
export function ownUnits({ locale, massUnits, temperatureUnits }: OwnUnits): OwnUnits {
  return { locale, massUnits, temperatureUnits }
}
