import { describe, expect, test } from 'vitest'
import { analyseTrial } from '@/lib/kitchen/results/analyse-trial'
import { conditionsByArm } from '@/lib/kitchen/results/conditions-by-arm'
import { countBatches } from '@/lib/kitchen/results/count-batches'
import { outlierFlags } from '@/lib/kitchen/results/outlier-flags'
import type { ConditionCode } from '@/lib/kitchen/results/trial-facts'
import { declaredTrial, maltDoughs, measuredBatch } from '@/tests/support/evidence-samples'

const { arms } = declaredTrial()
const withCondition = (code: ConditionCode, byArm: readonly (number | null)[]) =>
  maltDoughs.map((batch) => ({ ...batch, conditions: { ...batch.conditions, [code]: byArm[batch.arm]! } }))
const notableOf = (code: ConditionCode, byArm: readonly (number | null)[]) =>
  conditionsByArm({ arms, batches: withCondition(code, byArm) })[0]!.arms.map(({ isNotable }) => isNotable)

describe('what else differed', () => {
  test('dough temperature is spoken of from 1 °C on, in both directions', () => {
    expect(notableOf('dough-temp', [25, 25.9, 26])).toEqual([false, false, true])
    expect(notableOf('dough-temp', [25.1, 24.1, 24.2])).toEqual([false, true, false])
  })

  test('proof time from a tenth of the control’s', () => {
    expect(notableOf('proof-time', [3000, 3300, 3290])).toEqual([false, true, false])
  })

  test('water beyond the plan of each arm, because an arm may be planned with another amount', () => {
    expect(notableOf('water-added', [600, 600, 598])).toEqual([false, false, false])
    expect(notableOf('water-added', [600, 606, 605])).toEqual([false, true, true])
  })

  test('is silent about what nobody wrote down, and about an arm of which it is missing', () => {
    expect(conditionsByArm({ arms, batches: maltDoughs })).toEqual([])
    const [condition] = conditionsByArm({ arms, batches: withCondition('dough-temp', [25, null, 27]) })
    expect(condition!.arms[1]).toMatchObject({
      mean: null,
      recorded: 0,
      batches: 3,
      difference: null,
      isNotable: false,
    })
  })

  test('puts the effect of an arm in doubt and leaves its verdict', () => {
    const { comparison } = analyseTrial(declaredTrial(), withCondition('dough-temp', [25, 25, 26.8]))
    expect(comparison!.arms[2]).toMatchObject({ doubts: ['dough-temp'], verdict: { verdict: 'better', clearly: true } })
    expect(comparison!.conditions[0]!.arms[2]!.difference).toBeCloseTo(1.8, 10)
  })
})

describe('values that stand out are flagged and kept', () => {
  const values = [4, 4.01, 3.99, 4.02, 3.98, 4.01, 3.99, 4]

  test('a loaf far from its fellows', () => {
    const batches = [1, 2, 3].flatMap((day) =>
      [0, 1].map((arm) =>
        measuredBatch({ arm, day, values: day === 2 && arm === 1 ? [...values.slice(1), 5] : values }),
      ),
    )
    const { counted } = countBatches({ factor: null, batches })
    const [flag, ...others] = outlierFlags({ measured: counted, hasFactor: false }).flags.filter(
      ({ level }) => level === 'loaf',
    )
    expect(others).toEqual([])
    expect(flag).toMatchObject({ level: 'loaf', batchId: '2-1', piece: 8, value: 5 })
    expect(flag!.p).toBeLessThan(0.01)
    expect(counted.find(({ batch }) => batch.id === '2-1')!.values).toContain(5)
  })

  test('a dough far from what was expected of it, whatever the day does to all', () => {
    const doughs = Array.from({ length: 18 }, (_, i) =>
      measuredBatch({
        arm: i % 3,
        day: 1 + Math.floor(i / 3),
        values: [4 + Math.floor(i / 3) + (i % 3) * 0.2 + 0.02 * Math.sin(3 * i) - (i === 7 ? 0.5 : 0)],
      }),
    )
    const { comparison } = analyseTrial(declaredTrial({ mixingDays: 6 }), doughs)
    expect(comparison!.doughCheck).toBe('this-dough')
    expect(comparison!.flags).toMatchObject([{ level: 'batch', batchId: '3-1' }])
    expect(comparison!.arms[1]!.batches).toBe(6)
  })

  test('with a control and one arm, one dough each a day, the pair of that day', () => {
    const doughs = Array.from({ length: 12 }, (_, i) =>
      measuredBatch({
        arm: i % 2,
        day: 1 + Math.floor(i / 2),
        values: [(i === 7 ? 0.6 : 1) * (4 + 0.01 * Math.sin(5 * i))],
      }),
    )
    const { comparison } = analyseTrial(declaredTrial({ arms: arms.slice(0, 2), mixingDays: 6 }), doughs)
    expect(comparison!.doughCheck).toBe('one-of-these')
    expect(comparison!.flags.map(({ batchId }) => batchId)).toEqual(['4-0', '4-1'])
  })

  test('nothing without spread or with too few', () => {
    const { counted } = countBatches({
      factor: null,
      batches: [measuredBatch({ arm: 0, day: 1, values: [4, 4, 4, 4] })],
    })
    expect(outlierFlags({ measured: counted, hasFactor: false })).toEqual({ flags: [], doughs: 'cannot-be-told' })
    expect(outlierFlags({ measured: [], hasFactor: false })).toEqual({ flags: [], doughs: 'cannot-be-told' })
  })
})
