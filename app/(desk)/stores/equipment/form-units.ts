import type { MassUnits } from '@/lib/words/format/mass'
import type { TemperatureUnits } from '@/lib/words/format/temperature-difference'

/** Locale and units that stood on the form, so that a number means what was beside its field. */
export type FormUnits = { locale: string; massUnits: MassUnits; temperatureUnits: TemperatureUnits }
