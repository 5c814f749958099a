import { degreeSign } from './temperature-difference'
import { temperatureInUnit } from './temperature'
import { poundsAndOunces } from './pounds-and-ounces'
import { formatNumber } from './number'
import { plainNumber } from './plain-number'
import { withUnit } from './with-unit'
import type { Words } from '../words'
import type { OwnUnits } from './own-units'

type Units = Words['formulas']['units']

/** Below this a percentage is written with three digits that count instead of to 0.01. */
const smallPct = 0.1

/** How this subject writes its quantities: percentages to 0.01 (small ones finer), weights by their size in the bakery's units, times in minutes. */
export function formulaFormat({ locale, massUnits, temperatureUnits }: OwnUnits, units: Units) {
  // A dose of some ppm on flour would read as nothing at two digits.
  const isSmall = (value: number) => value !== 0 && Math.abs(value) < smallPct
  const pct = (value: number) =>
    withUnit(
      isSmall(value) ? plainNumber(value, { locale, significant: 3 }) : formatNumber(value, { locale, digits: 2 }),
      units.pct,
    )
  const mass = (massG: number) =>
    massUnits === 'metric'
      ? withUnit(formatNumber(massG, { locale, digits: massG < 10 ? 2 : massG < 100 ? 1 : 0 }), units.g)
      : poundsAndOunces(massG, { locale, digits: massG < 30 ? 3 : massG < 300 ? 2 : 1 })
  return {
    pct,
    /** To 0.1, for what comes out of a calculation. */
    pctShort: (value: number) => withUnit(formatNumber(value, { locale, digits: 1 }), units.pct),
    pctDifference: (value: number) =>
      isSmall(value) && value > 0
        ? `+${pct(value)}`
        : isSmall(value)
          ? pct(value)
          : withUnit(formatNumber(value, { locale, digits: 2, signed: true }), units.pct),
    /** A figure on 100 parts of flour: no unit. */
    parts: (value: number) => formatNumber(value, { locale, digits: 1 }),
    mass,
    massShort: (massG: number) =>
      massUnits === 'metric' ? withUnit(plainNumber(massG, { locale }), units.g) : mass(massG),
    temp: (tempC: number) =>
      withUnit(
        plainNumber(temperatureInUnit(tempC, temperatureUnits), { locale, significant: 4 }),
        degreeSign[temperatureUnits],
      ),
    minutes: (timeS: number) => withUnit(plainNumber(timeS / 60, { locale }), units.min),
    count: (value: number) => plainNumber(value, { locale }),
  }
}

export type FormulaFormat = ReturnType<typeof formulaFormat>
