import { describe, expect, it } from 'vitest'
import { isDue } from '@/lib/kitchen/jobs/is-due'

const hourMs = 60 * 60_000
const daily = { everyMs: 24 * hourMs }
const began = new Date('2026-03-02T04:00:00Z')
const after = (ms: number) => new Date(began.getTime() + ms)
const ended = (outcome: 'done' | 'failed') => ({ beganAt: began, endedAt: after(1000), outcome })

describe('a job is begun', () => {
  it('where it never was', () => {
    expect(isDue(daily, null, began)).toBe(true)
  })

  it('when its time has come since it was begun, to the millisecond', () => {
    expect(isDue(daily, ended('done'), after(24 * hourMs - 1))).toBe(false)
    expect(isDue(daily, ended('done'), after(24 * hourMs))).toBe(true)
  })

  it('within the hour after it failed, and no later than its usual time', () => {
    expect(isDue(daily, ended('failed'), after(hourMs - 1))).toBe(false)
    expect(isDue(daily, ended('failed'), after(hourMs))).toBe(true)
    expect(isDue({ everyMs: 1000 }, ended('failed'), after(1000))).toBe(true)
  })

  it('at once where it was cut off, or begun by a clock that was ahead', () => {
    expect(isDue(daily, { beganAt: began, endedAt: null, outcome: null }, after(1))).toBe(true)
    expect(isDue(daily, ended('done'), after(-1))).toBe(true)
  })
})
