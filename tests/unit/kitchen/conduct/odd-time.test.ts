import { expect, it } from 'vitest'
import { clockToleranceMs, oddTime } from '@/lib/kitchen/conduct/odd-time'

const begunAt = new Date('2026-03-02T04:00:00Z')
const receivedAt = new Date('2026-03-02T09:00:00Z')
const odd = (takenAt: Date, begun: Date | null = begunAt) => oddTime({ takenAt, receivedAt, begunAt: begun })
const from = (moment: Date, ms: number) => new Date(moment.getTime() + ms)

it('a time between the begin of the dough and the receipt is as it should be, and so is a clock that is a little off', () => {
  expect(odd(new Date('2026-03-02T06:00:00Z'))).toBeNull()
  expect(odd(from(begunAt, -clockToleranceMs))).toBeNull()
  expect(odd(from(receivedAt, clockToleranceMs))).toBeNull()
})

it('a time before the dough was begun, or ahead of the receipt, is odd', () => {
  expect(odd(from(begunAt, -clockToleranceMs - 1))).toBe('before-begun')
  expect(odd(from(receivedAt, clockToleranceMs + 1))).toBe('in-the-future')
  expect(odd(new Date('2000-01-01T00:00:00Z'))).toBe('before-begun')
  expect(odd(new Date('2100-12-31T00:00:00Z'))).toBe('in-the-future')
})

it('where nobody said when the dough was begun only the future is odd', () => {
  expect(odd(new Date('2000-01-01T00:00:00Z'), null)).toBeNull()
  expect(odd(from(receivedAt, clockToleranceMs + 1), null)).toBe('in-the-future')
})
