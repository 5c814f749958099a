import { smallMassUnit, type MassUnits } from '@/lib/words/format/mass'
import { massText } from '@/lib/words/format/mass-text'
import { plainNumber } from '@/lib/words/format/plain-number'
import { temperatureInUnit } from '@/lib/words/format/temperature'
import { degreeSign, differenceInUnit, type TemperatureUnits } from '@/lib/words/format/temperature-difference'
import { withUnit } from '@/lib/words/format/with-unit'

export type CheckBakery = {
  locale: string
  timeZone: string
  massUnits: MassUnits
  temperatureUnits: TemperatureUnits
}

/** How figures of a check are shown: masses, volumes, temperatures and how far off one may be, in the bakery's units. */
export function checkFigures({ locale, massUnits, temperatureUnits }: CheckBakery) {
  const degree = degreeSign[temperatureUnits]
  const number = (value: number) => withUnit(plainNumber(value, { locale }), degree)
  return {
    massUnit: smallMassUnit(massUnits),
    degree,
    mass: (massG: number) => massText(massG, smallMassUnit(massUnits), locale),
    volume: (volumeMl: number) => withUnit(plainNumber(volumeMl, { locale }), 'mL'),
    temp: (tempC: number) => number(temperatureInUnit(tempC, temperatureUnits)),
    degrees: (differenceC: number) => number(differenceInUnit(differenceC, temperatureUnits)),
  }
}
