import { checkDose } from '@/lib/calc/dosing/check-dose'
import type { DoseLimit } from '@/lib/calc/dosing/types'
import { publishedCheck } from './published-check'

/** Checks that a dose exactly at a limit in mg per kg of flour is within it and one a thousandth above is not. */
export function checkLimitOnFlour(id: string, limit: DoseLimit): void {
  const substance = limit.substances[0] ?? ''
  const found = (mgPerKg: number) =>
    checkDose({
      sources: [{ lineId: 'one', substance, form: limit.form, massG: mgPerKg / 1000, activeShare: 1 }],
      flourMassG: 1000,
      finishedFoodPer100Flour: null,
      flourContentMgPerKg: {},
      conversions: [],
      customary: [],
      limits: [limit],
    }).limits[0]?.code
  const maxMgPerKg = limit.maxMgPerKg ?? Number.NaN
  for (const [what, mgPerKg, expected] of [
    ['at', maxMgPerKg, 'within-unchecked-limit'],
    ['a thousandth above', maxMgPerKg * 1.001, 'over-unchecked-limit'],
  ] as const) {
    publishedCheck({
      id,
      of: ['dosing/check-dose'],
      what: `${substance}, ${what} ${maxMgPerKg} mg per kg of flour`,
      source: limit.source,
      status: 'published',
      expected,
      got: () => found(mgPerKg),
    })
  }
}
