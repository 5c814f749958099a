import { expect, it, test } from 'vitest'
import { readTimeCell } from '@/lib/kitchen/readings/import/read-time-cell'

test.each([
  ['2026-03-02 04:30', '2026-03-02T03:30:00.000Z'],
  ['2026-03-02T04:30:15', '2026-03-02T03:30:15.000Z'],
  ['02.03.2026 4:30', '2026-03-02T03:30:00.000Z'],
  ['2.7.2026', '2026-07-02T10:00:00.000Z'],
  ['2026-03-02', '2026-03-02T11:00:00.000Z'],
  ['2026-03-02T04:30:00+05:00', '2026-03-01T23:30:00.000Z'],
  ['2026-03-02T04:30Z', '2026-03-02T04:30:00.000Z'],
])('%s in Berlin is %s', (text, at) => {
  expect(readTimeCell(text, 'Europe/Berlin')?.toISOString()).toBe(at)
})

// The last is skipped by the spring night.
it.each([
  '',
  'noon',
  '3/2/2026',
  '2026-02-31',
  '2026-03-02 24:30',
  '2026-03-02 04:30:61',
  '2026-13-02T04:30Z',
  '2026-03-29 02:30',
])('%s is no time', (text) => {
  expect(readTimeCell(text, 'Europe/Berlin')).toBeNull()
})
