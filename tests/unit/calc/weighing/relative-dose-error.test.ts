import { expect, test } from 'vitest'
import { relativeDoseErrorShare } from '@/lib/calc/weighing/relative-dose-error'

test('2 g on a kitchen scale of 1 g are known to 41 % at k = 2', () =>
  expect(relativeDoseErrorShare({ netMassG: 2, resolutionG: 1, repeatabilityG: 0, coverageFactor: 2 })).toBeCloseTo(
    0.40825,
    5,
  ))
