import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { atMostEvery } from '@/lib/kitchen/live/at-most-every'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

it('does the first at once, and any number that come within the time as one at its end', () => {
  let done = 0
  const { call } = atMostEvery(1_000, () => (done += 1))
  call()
  expect(done).toBe(1)
  for (let times = 0; times < 50; times++) call()
  vi.advanceTimersByTime(999)
  expect(done).toBe(1)
  vi.advanceTimersByTime(1)
  expect(done).toBe(2)
  // That one counts too: the next waits as long again.
  call()
  vi.advanceTimersByTime(999)
  expect(done).toBe(2)
  vi.advanceTimersByTime(1)
  expect(done).toBe(3)
  vi.advanceTimersByTime(10_000)
  expect(done).toBe(3)
  call()
  expect(done).toBe(4)
})

it('does nothing of what still waits once it is stopped', () => {
  let done = 0
  const { call, stop } = atMostEvery(1_000, () => (done += 1))
  call()
  call()
  stop()
  vi.advanceTimersByTime(10_000)
  expect(done).toBe(1)
})
