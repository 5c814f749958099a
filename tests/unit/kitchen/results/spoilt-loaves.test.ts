import { describe, expect, it } from 'vitest'
import { spoiltLoaves } from '@/lib/kitchen/results/spoilt-loaves'

describe('spoilt loaves', () => {
  it('are counted with the exact interval of their share', () => {
    // Clopper & Pearson (1934): with none of n the upper limit is 1 − (α/2)^(1/n), with all of n the lower one (α/2)^(1/n).
    const none = spoiltLoaves({ pieces: 12, batches: 3 }, 4, 95)!
    expect(none).toMatchObject({ count: 0, of: 12, interval: { lowPct: 0 } })
    expect(none.interval!.highPct).toBeCloseTo(100 * (1 - 0.025 ** (1 / 12)), 9)
    const all = spoiltLoaves({ pieces: 0, batches: 3 }, 4, 90)!
    expect(all).toMatchObject({ count: 12, of: 12, interval: { highPct: 100 } })
    expect(all.interval!.lowPct).toBeCloseTo(100 * 0.05 ** (1 / 12), 9)
    const one = spoiltLoaves({ pieces: 11, batches: 3 }, 4, 95)!
    expect(one.count).toBe(1)
    expect(one.interval!.lowPct).toBeGreaterThan(0)
  })

  it('are not said where none were counted or more were good than planned, and have no interval among very many', () => {
    expect(spoiltLoaves(null, 4, 95)).toBeNull()
    expect(spoiltLoaves({ pieces: 13, batches: 3 }, 4, 95)).toBeNull()
    expect(spoiltLoaves({ pieces: 35_999, batches: 360 }, 100, 95)).toEqual({ count: 1, of: 36_000, interval: null })
  })
})
