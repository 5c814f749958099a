import { digitsOfStep } from './digits-of-step'
import { nameInUnit } from './name-in-unit'
import { formatNumber } from './number'
import { massInUnit, smallMassUnit } from './mass'
import type { OwnUnits } from './own-units'
import { plainNumber } from './plain-number'
import { poundsAndOunces } from './pounds-and-ounces'
import { temperatureInUnit } from './temperature'
import { degreeSign, differenceInUnit } from './temperature-difference'
import { withUnit } from './with-unit'

/** How plans write their quantities, in the bakery's own units. */
export function planFormat({ locale, massUnits, temperatureUnits }: OwnUnits) {
  const unit = smallMassUnit(massUnits)
  const digitsFor = (value: number) => (value === 0 ? 0 : value < 1 ? 3 : value < 10 ? 2 : value < 100 ? 1 : 0)
  const inUnit = (massG: number, digits: number, signed = false) =>
    massUnits === 'ounces'
      ? poundsAndOunces(massG, { locale, digits, signed })
      : withUnit(formatNumber(massG, { locale, digits, signed }), unit)
  const mass = (massG: number, signed = false) => inUnit(massG, digitsFor(Math.abs(massInUnit(massG, unit))), signed)
  const digitsOfScale = (resolutionG: number) => digitsOfStep(massInUnit(resolutionG, unit))
  /** A mass for the scale, with the digits that the scale shows; grams are at the column's head. */
  const weighed = (massG: number, resolutionG: number) =>
    massUnits === 'ounces'
      ? inUnit(massG, digitsOfScale(resolutionG))
      : formatNumber(massG, { locale, digits: digitsOfScale(resolutionG) })
  return {
    /** The head of a column of weights: with their unit where they stand without it. */
    massHead: (head: string) => (massUnits === 'ounces' ? head : nameInUnit(head, unit)),
    mass: (massG: number) => mass(massG),
    massDifference: (massG: number) => mass(massG, true),
    weighed,
    /** The same with its unit. */
    weighedInUnit: (massG: number, resolutionG: number) => inUnit(massG, digitsOfScale(resolutionG)),
    temp: (tempC: number) =>
      withUnit(
        formatNumber(temperatureInUnit(tempC, temperatureUnits), { locale, digits: 0 }),
        degreeSign[temperatureUnits],
      ),
    tempFine: (tempC: number) =>
      withUnit(
        formatNumber(temperatureInUnit(tempC, temperatureUnits), { locale, digits: 1 }),
        degreeSign[temperatureUnits],
      ),
    tempDifference: (differenceC: number) =>
      withUnit(
        formatNumber(differenceInUnit(differenceC, temperatureUnits), { locale, digits: 1 }),
        degreeSign[temperatureUnits],
      ),
    pct: (value: number) => withUnit(plainNumber(value, { locale, significant: 3 }), '%'),
    pctDifference: (value: number) => withUnit(formatNumber(value, { locale, digits: 2, signed: true }), '%'),
    pctWhole: (share: number) => withUnit(formatNumber(100 * share, { locale, digits: 0 }), '%'),
    pctFine: (share: number) => withUnit(formatNumber(100 * share, { locale, digits: 1 }), '%'),
    minutes: (timeS: number, min: string) => withUnit(plainNumber(timeS / 60, { locale }), min),
    count: (value: number) => plainNumber(value, { locale }),
  }
}

export type PlanFormat = ReturnType<typeof planFormat>
