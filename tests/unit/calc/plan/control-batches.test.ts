import { expect, test } from 'vitest'
import { controlBatches } from '@/lib/calc/plan/control-batches'

test.each([
  [1, 3, 3],
  [2, 3, 4],
  [4, 3, 6],
  [6, 4, 10],
])('%d arms of %d batches: %d of the control', (testArmCount, batchesPerArm, suggested) => {
  expect(controlBatches({ testArmCount, batchesPerArm })).toEqual({ suggested, extra: suggested - batchesPerArm })
})

test('for a fixed number of batches the standard error is least near the suggestion', () => {
  // 6 arms, 4 batches each, 10 of the control: moving one arm's worth either way makes differences less exact
  const variance = (arm: number, control: number) => 1 / arm + 1 / control
  expect(variance(4, 10)).toBeLessThan(variance(3, 16))
  expect(variance(4, 10)).toBeLessThan(variance(5, 4))
})
