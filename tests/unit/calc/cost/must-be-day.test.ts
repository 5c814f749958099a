import { expect, test } from 'vitest'
import { mustBeDay } from '@/lib/calc/cost/must-be-day'

test('days that exist', () => {
  for (const day of ['2026-01-31', '2024-02-29', '2000-02-29', '2026-12-31']) expect(mustBeDay('d', day)).toBe(day)
})
test('days that do not', () => {
  for (const day of [
    '2026-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-1-1',
    '01.02.2026',
    '2026-01-00',
    '',
  ]) {
    expect(() => mustBeDay('d', day), day).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  }
})
