import { CalcError } from '../error'

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/**
 * Demands a calendar day 'YYYY-MM-DD' that exists. Days of this form sort as text; no zone or clock is involved.
 * @throws CalcError 'out-of-range'
 */
export function mustBeDay(field: string, day: string): string {
  const [, year, month, date] = DAY.exec(day) ?? []
  const y = Number(year)
  const m = Number(month)
  const isLeap = (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0
  const last = m === 2 && isLeap ? 29 : (DAYS_IN_MONTH[m - 1] ?? 0)
  if (year === undefined || !(Number(date) >= 1 && Number(date) <= last))
    throw new CalcError('out-of-range', { field, value: day })
  return day
}
