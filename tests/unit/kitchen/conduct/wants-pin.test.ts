import { expect, it } from 'vitest'
import { wantsPin } from '@/lib/kitchen/conduct/wants-pin.input'

const pinGivenAt = new Date('2026-03-02T04:00:00Z')
const after = (minutes: number) => new Date(pinGivenAt.getTime() + minutes * 60_000)

it('asks for the PIN again five minutes after it was given, and never for one’s own slip', () => {
  expect(wantsPin({ isSlip: false, pinGivenAt, now: after(5) })).toBe(false)
  expect(wantsPin({ isSlip: false, pinGivenAt, now: after(5.01) })).toBe(true)
  expect(wantsPin({ isSlip: true, pinGivenAt, now: after(200) })).toBe(false)
})

it('is wanted of whoever came in by a badge, however lately', () => {
  expect(wantsPin({ isSlip: false, pinGivenAt: null, now: after(0) })).toBe(true)
  expect(wantsPin({ isSlip: true, pinGivenAt: null, now: after(0) })).toBe(false)
})
