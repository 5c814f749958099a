import type { StepDetails } from '../../kitchen/steps/step-kinds.input'
import { plainNumber } from '../../words/format/plain-number'
import { withUnit } from '../../words/format/with-unit'
import { say } from '../../words/say'
import type { Language, Words } from '../../words/words'

/** A temperature in the bakery's unit, to a tenth: nobody reads an oven closer. */
export function inTemperatureUnit(tempC: number, unit: '°C' | '°F'): number {
  // No zero has a sign on a thermometer.
  return Math.round((unit === '°F' ? tempC * 1.8 + 32 : tempC) * 10) / 10 + 0
}

/** The same the other way, in °C as the book holds it: so exact that what was typed comes back. */
export function inCelsius(value: number, unit: '°C' | '°F'): number {
  return Math.round((unit === '°F' ? (value - 32) / 1.8 : value) * 100) / 100
}

type How = { unit: '°C' | '°F'; locale: string; words: Words['stationSteps']['step']; language: Language }

/** What is said of a step beside when it was, a line each. */
export function detailsSaid(step: StepDetails, { unit, locale, words, language }: How): string[] {
  const temp = (tempC: number) => withUnit(plainNumber(inTemperatureUnit(tempC, unit), { locale }), unit)
  const { setting, place, beside, chamberTempC, setTempC, readTempC, steam } = step
  return [
    ...(setting === null ? [] : [say(words.told.setting, language, { setting })]),
    ...(chamberTempC === null ? [] : [say(words.told.chamber, language, { temp: temp(chamberTempC) })]),
    ...(place === null ? [] : [place]),
    ...(setTempC === null ? [] : [say(words.told.set, language, { temp: temp(setTempC) })]),
    ...(readTempC === null ? [] : [say(words.told.read, language, { temp: temp(readTempC) })]),
    ...(steam === null ? [] : [steam ? words.steam.yes : words.steam.no]),
    ...(beside === null ? [] : [say(words.told.beside, language, { beside })]),
  ]
}
