import { mustBeWithin } from '../checks'

/** Between these, about, firming goes the faster the colder it is; frozen bread and warmer bread follow other rules. */
const STORED_C = { min: -1, max: 32 } as const

/**
 * Rate of firming at another storage temperature: bread firms faster when colder, by a factor for each 10 °C. It falls
 * with warmth, the other way round than fermentation.
 * @param ratePerDay k at `tempC`, > 0; @param tempC, otherTempC −1 to 32 °C
 * @param timesPer10Colder over 1 to 10; 2.18 follows from 6 days at 30 °C being one day at 7 °C
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: H. McGee, On Food and Cooking (one day at 7 °C as six at 30 °C); range: Cornford, Axford and Elton (1964).
 * @example 0.25 a day at 20 °C, 2.17935: 0.804 at 5 °C
 */
export function rateAtTemperature(q: {
  ratePerDay: number
  tempC: number
  otherTempC: number
  timesPer10Colder: number
}): number {
  mustBeWithin('ratePerDay', q.ratePerDay, { over: 0 })
  mustBeWithin('tempC', q.tempC, STORED_C)
  mustBeWithin('otherTempC', q.otherTempC, STORED_C)
  mustBeWithin('timesPer10Colder', q.timesPer10Colder, { over: 1, max: 10 })
  return mustBeWithin('ratePerDay', q.ratePerDay * q.timesPer10Colder ** ((q.tempC - q.otherTempC) / 10))
}
