import type { MassUnits } from './mass'
import type { TemperatureUnits } from './temperature-difference'

/** In which marks and units a formula is written and typed. */
export type FormulaUnits = { locale: string; massUnits: MassUnits; temperatureUnits: TemperatureUnits }

/** Only these of a bakery's settings, to be handed to the browser and bound to a form. */
export function formulaUnits({ locale, massUnits, temperatureUnits }: FormulaUnits): FormulaUnits {
  return { locale, massUnits, temperatureUnits }
}
