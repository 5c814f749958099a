import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { nextRoundMs } from '@/lib/kitchen/jobs/next-round-ms'
import { startJobRunner } from '@/lib/kitchen/jobs/start-job-runner'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

const minuteMs = 60_000

it('looks every minute, and ever more seldom while it cannot, up to a quarter of an hour', () => {
  expect([0, 1, 2, 3, 4, 5, 1000].map(nextRoundMs)).toEqual(
    [1, 2, 4, 8, 15, 15, 15].map((minutes) => minutes * minuteMs),
  )
})

it('goes on after a round that failed, later, and at its usual pace again after one that did not', async () => {
  let rounds = 0
  const runner = startJobRunner(() => {
    rounds += 1
    return rounds === 1 ? Promise.reject(new Error('away')) : Promise.resolve()
  })
  await vi.advanceTimersByTimeAsync(minuteMs)
  expect(rounds).toBe(1)
  await vi.advanceTimersByTimeAsync(2 * minuteMs - 1)
  expect(rounds).toBe(1)
  await vi.advanceTimersByTimeAsync(1)
  expect(rounds).toBe(2)
  await vi.advanceTimersByTimeAsync(minuteMs)
  expect(rounds).toBe(3)
  runner.stop()
})

it('begins no round while one is under way, tells it to stop, and begins none after', async () => {
  const told: AbortSignal[] = []
  let finish = () => {}
  const runner = startJobRunner((signal) => {
    told.push(signal)
    return new Promise((resolve) => (finish = resolve))
  })
  await vi.advanceTimersByTimeAsync(100 * minuteMs)
  expect(told.map(({ aborted }) => aborted)).toEqual([false])
  runner.stop()
  expect(told.map(({ aborted }) => aborted)).toEqual([true])
  finish()
  await vi.advanceTimersByTimeAsync(100 * minuteMs)
  expect(told).toHaveLength(1)
})
