import { expect, test } from 'vitest'
import { summariseArms } from '@/lib/calc/comparison/summarise-arms'
import { expectRefusal } from '@/tests/support/arm-rows'

test('arms come in the order of their first value, with mean and spread of their own', () => {
  const { arms, sumSquares, count, largest } = summariseArms(
    [
      { arm: 'b', y: 10 },
      { arm: 'a', y: -20 },
      { arm: 'b', y: 14 },
    ],
    1,
  )
  expect(arms).toEqual([
    { arm: 'b', count: 2, offset: 2, mean: 12, sumSquares: 8 },
    { arm: 'a', count: 1, offset: -30, mean: -20, sumSquares: 0 },
  ])
  expect([sumSquares, count, largest]).toEqual([8, 3, 20])
})
test('one arm, an arm without a name or with too few values is refused', () => {
  expectRefusal(() => summariseArms([], 1), 'empty')
  expectRefusal(
    () =>
      summariseArms(
        [
          { arm: 'a', y: 1 },
          { arm: 'a', y: 2 },
        ],
        1,
      ),
    'not-possible',
    'one-arm',
  )
  expectRefusal(
    () =>
      summariseArms(
        [
          { arm: 'a', y: 1 },
          { arm: '', y: 2 },
        ],
        1,
      ),
    'empty',
    'arm-without-name',
  )
  expectRefusal(
    () =>
      summariseArms(
        [
          { arm: 'a', y: 1 },
          { arm: 'a', y: 3 },
          { arm: 'b', y: 2 },
        ],
        2,
      ),
    'empty',
    'few-values',
  )
})
