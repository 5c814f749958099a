import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nothingTyped, typeKey } from '@/lib/station/scan/typed-keys'

/** All that is taken for scanned while keys come at these distances. */
function scannedOf(keys: readonly { key: string; afterMs: number }[]): string[] {
  let [typed, at] = [nothingTyped, 1_000]
  return keys.flatMap(({ key, afterMs }) => {
    at += afterMs
    const next = typeKey(typed, key, at)
    typed = next.typed
    return next.scanned === null ? [] : [next.scanned]
  })
}
const typedAt = (text: string, afterMs: number) => [...Array.from(text), 'Enter'].map((key) => ({ key, afterMs }))

describe('what a hand scanner types', () => {
  it('is read whole, with the capitals that it presses Shift for', () => {
    expect(scannedOf(typedAt('https://a.example/station#x.1', 12))).toEqual(['https://a.example/station#x.1'])
    const shifted = ['Shift', 'F', '-', '1', 'Enter'].map((key) => ({ key, afterMs: 30 }))
    expect(scannedOf(shifted)).toEqual(['F-1'])
    expect(scannedOf([...typedAt('101', 5), ...typedAt('102', 5)])).toEqual(['101', '102'])
  })

  it('is not what somebody types, nor an Enter by itself or after two signs', () => {
    expect(scannedOf(typedAt('101', 150))).toEqual([])
    expect(scannedOf(typedAt('', 5))).toEqual([])
    expect(scannedOf(typedAt('10', 5))).toEqual([])
  })

  it('is not joined to what was typed before a pause', () => {
    expect(scannedOf([{ key: '9', afterMs: 5 }, { key: '1', afterMs: 500 }, ...typedAt('01', 5)])).toEqual(['101'])
  })

  it('whatever is typed in one go comes out as it was typed, and nothing comes out of slow keys', () => {
    const signs = fc.string({ unit: 'binary', minLength: 3, maxLength: 60 })
    fc.assert(
      fc.property(signs, fc.integer({ min: 0, max: 80 }), (text, afterMs) => {
        expect(scannedOf(typedAt(text, afterMs))).toEqual([text])
      }),
    )
    fc.assert(
      fc.property(signs, fc.integer({ min: 81, max: 5_000 }), (text, afterMs) => {
        expect(scannedOf(typedAt(text, afterMs))).toEqual([])
      }),
    )
  })
})
