import { describe, expect, it } from 'vitest'
import { analyseTrial } from '@/lib/kitchen/results/analyse-trial'
import type { ArmResult } from '@/lib/kitchen/results/compare-arms'
import { asOfVolume, ratiosOf } from '@/lib/kitchen/results/volume-ratios'
import { declaredTrial, maltDoughs, measuredBatch } from '../../../support/evidence-samples'

const comparedIn = (asked: Parameters<typeof analyseTrial> | null) => {
  const { comparison } = analyseTrial(...((asked ?? []) as Parameters<typeof analyseTrial>))
  return comparison!
}
const arm = (effect: Partial<NonNullable<ArmResult['effect']>> | null) => ({ arm: 1, effect }) as unknown as ArmResult

describe('loaf volume against the control', () => {
  it('of loaves of one mass is what the specific volume says, by the same rule', () => {
    const asked = asOfVolume(declaredTrial(), maltDoughs)!
    const own = ratiosOf(comparedIn([declaredTrial(), maltDoughs]))
    const ofVolume = ratiosOf(comparedIn([asked.declared, asked.batches]))
    expect([...ofVolume.keys()]).toEqual([1, 2])
    for (const [position, { ratio, low, high }] of ofVolume) {
      expect(ratio).toBeCloseTo(own.get(position)!.ratio, 12)
      expect(low).toBeCloseTo(own.get(position)!.low!, 12)
      expect(high).toBeCloseTo(own.get(position)!.high!, 12)
    }
  })

  it('is worked out though the verdict rests on a difference in the measure’s unit', () => {
    const declared = declaredTrial({ marginUnit: 'unit', margin: 0.2 })
    const asked = asOfVolume(declared, maltDoughs)!
    expect(asked.declared.marginUnit).toBe('pct')
    expect(ratiosOf(comparedIn([asked.declared, asked.batches])).get(2)!.low).toBeGreaterThan(1)
  })

  it('is of the doughs that count, and of none where no volume was measured', () => {
    const lost = maltDoughs.map((batch) => (batch.id === '2-1' ? { ...batch, state: 'lost' as const } : batch))
    expect(asOfVolume(declaredTrial(), lost)!.batches.map(({ id }) => id)).not.toContain('2-1')
    const unmeasured = [0, 1].map((position) => measuredBatch({ arm: position, day: 1, values: [4, 4.1] }))
    const without = unmeasured.map((batch) => ({
      ...batch,
      pieces: batch.pieces.map((piece) => ({ ...piece, volumeMl: null })),
    }))
    expect(asOfVolume(declaredTrial(), unmeasured)).not.toBeNull()
    expect(asOfVolume(declaredTrial(), without)).toBeNull()
  })

  it('has no ends where there is no interval, and none below nothing', () => {
    expect(ratiosOf({ arms: [arm({ pct: 5, lowPct: null, highPct: null })] }).get(1)).toEqual({
      ratio: 1.05,
      low: null,
      high: null,
    })
    expect(ratiosOf({ arms: [arm({ pct: 0, lowPct: -140, highPct: 300 })] }).get(1)).toEqual({
      ratio: 1,
      low: 0,
      high: 4,
    })
    for (const highPct of [1e9, Number.POSITIVE_INFINITY, Number.NaN])
      expect(ratiosOf({ arms: [arm({ pct: 5, lowPct: -99, highPct })] }).get(1)).toMatchObject({
        low: null,
        high: null,
      })
    expect(ratiosOf({ arms: [arm({ pct: 1e9, lowPct: 1, highPct: 2 })] }).size).toBe(0)
    expect(ratiosOf({ arms: [arm(null), arm({ pct: null })] }).size).toBe(0)
  })
})
