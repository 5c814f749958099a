import type { LimitedFood, LimitedSubstance, LimitRegion, LimitRow } from '@/lib/calc/dosing/limit-rows'
import { limitsOf } from '@/lib/calc/dosing/limits'
import { publishedCheck } from './published-check'

/** The stored row of a substance for a food. */
export function storedLimit(region: LimitRegion, substance: LimitedSubstance, food: LimitedFood): LimitRow | undefined {
  return limitsOf({ region, substance }).rows.find((row) => row.food === food)
}

/** Checks a stored limit in mg per kg against its source. */
export function checkStoredLimit(
  id: string,
  row: LimitRow | undefined,
  substance: string,
  expected: number,
  source: string,
): void {
  publishedCheck({
    id,
    of: ['dosing/limits'],
    what: `${substance}, ${row?.food ?? 'no food'}, mg per kg of ${row?.basis ?? 'nothing'}`,
    source,
    status: 'published',
    expected,
    got: () => row?.maxMgPerKg ?? Number.NaN,
    tolerance: { absolute: 0 },
    why: 'the printed figure itself',
  })
}
