import { massFromUnit, massInUnit, smallMassUnit, type MassUnit, type MassUnits } from './mass'
import { plainNumber } from './plain-number'
import { temperatureFromUnit, temperatureInUnit } from './temperature'
import { degreeSign, type TemperatureUnits } from './temperature-difference'

/** How a quantity stands in a bakery's fields: kept in one unit, shown and typed in another. */
export type FieldFigure<Unit extends string = string> = {
  /** Behind the field. */
  unit: Unit
  /** What is kept as a number of the unit, not rounded. */
  inUnit(kept: number): number
  /** What is kept, from the number typed. */
  read(typed: number): number
  /** What stands in the field: the shortest number that is read back as the very same quantity. */
  write(kept: number, locale: string): string
}

const milli = 1000
/** More digits than a number holds are never needed. */
const mostDigits = 15

/**
 * A small mass, kept in g. Ounces are kept to 1 mg, so that 32 oz come back as 32.
 * @example massFigure('ounces').write(907.185, 'en-US') // '32'
 */
export function massFigure(units: MassUnits): FieldFigure<MassUnit> {
  const unit = smallMassUnit(units)
  return figure(
    unit,
    (typed) => massFromUnit(typed, unit),
    (massG) => massInUnit(massG, unit),
    units === 'metric',
  )
}

/** A temperature, kept in °C. Degrees Fahrenheit are kept to 0.001 °C, so that 78 °F come back as 78. */
export function temperatureFigure(units: TemperatureUnits): FieldFigure {
  return figure(
    degreeSign[units],
    (typed) => temperatureFromUnit(typed, units),
    (tempC) => temperatureInUnit(tempC, units),
    units === 'celsius',
  )
}

function figure<Unit extends string>(
  unit: Unit,
  fromUnit: (typed: number) => number,
  inUnit: (kept: number) => number,
  isKeptUnit: boolean,
): FieldFigure<Unit> {
  const read = (typed: number) => (isKeptUnit ? typed : Math.round(fromUnit(typed) * milli) / milli)
  return {
    unit,
    inUnit,
    read,
    write(kept, locale) {
      const exact = inUnit(kept)
      let significant = 1
      while (significant < mostDigits && read(Number(exact.toPrecision(significant))) !== kept) significant++
      return plainNumber(exact, { locale, significant, grouped: false })
    },
  }
}
