import { expect, it } from 'vitest'
import { isOwnSlip, ownSlipMs } from '@/lib/kitchen/conduct/is-own-slip.input'

const esi = { id: 'esi', name: 'Esi' }
const wrong = { person: esi, receivedAt: new Date('2026-03-02T04:00:00Z') }
const after = (ms: number) => new Date(wrong.receivedAt.getTime() + ms)

it('is one’s own, within ten minutes of the receipt', () => {
  expect(isOwnSlip(wrong, { person: esi, receivedAt: after(0) })).toBe(true)
  expect(isOwnSlip(wrong, { person: esi, receivedAt: after(ownSlipMs) })).toBe(true)
  expect(isOwnSlip(wrong, { person: esi, receivedAt: after(ownSlipMs + 1) })).toBe(false)
  expect(isOwnSlip(wrong, { person: { id: 'henk' }, receivedAt: after(1) })).toBe(false)
})
