import { describe, expect, test } from 'vitest'
import { acceptBatchContents } from '@/lib/calc/net-weight/accept-batch-contents'

/** A sample of 500 g packages of which so many hold 480 g: below 485 g, not below 470 g. */
const sample = (n: number, light: number) => [
  ...new Array<number>(n - light).fill(502),
  ...new Array<number>(light).fill(480),
]
const judge = (contentsG: number[], more: { batchPackages?: number; isDestructive?: boolean } = {}) =>
  acceptBatchContents({ batchPackages: 400, isDestructive: false, nominalG: 500, contentsG, ...more })

describe('a package below the second limit', () => {
  test('refuses a sample that its number would accept, and is spoken of', () =>
    expect(judge([...sample(29, 0), 460])).toMatchObject({
      defective: 1,
      belowAbsolute: 1,
      outcome: 'refused',
      cautions: expect.arrayContaining(['light-package-not-for-sale']),
    }))
  test('just at the limit it is not below it', () =>
    expect(judge([...sample(29, 0), 470])).toMatchObject({ outcome: 'accepted', belowAbsolute: 0 }))
})

test('one sample when packages are destroyed: one may be too light, two may not', () => {
  expect(judge(sample(20, 1), { isDestructive: true })).toMatchObject({ outcome: 'accepted', nextPackages: null })
  expect(judge(sample(20, 2), { isDestructive: true })).toMatchObject({ outcome: 'refused', nextPackages: null })
})

test('part of a sample, or more than both, is refused', () => {
  for (const n of [0, 20, 31, 59, 61]) {
    expect(() => judge(sample(n, Math.min(n, 2)).reverse())).toThrow(expect.objectContaining({ code: 'wrong-shape' }))
  }
})

test('a second sample that was not called for does not mend a refusal', () =>
  expect(() => judge([...sample(30, 3), ...sample(30, 0)].sort((a, b) => a - b))).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'first-sample-decides' }) }),
  ))
