import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { bestFit } from '@/lib/calc/fitting/best-fit'
import type { CurveFit } from '@/lib/calc/fitting/fit-curve'

const fitWith = (residualSumSquares: number) => (): CurveFit => ({ residualSumSquares }) as CurveFit
const refuse = (reason: string) => (): CurveFit => {
  throw new CalcError('no-convergence', { field: 'start', reason })
}

test('the one with the least residual sum of squares is taken, and a start that leads nowhere is passed over', () => {
  expect(bestFit([fitWith(3), refuse('a'), fitWith(1), fitWith(2)]).residualSumSquares).toBe(1)
})

test('when none comes about, the last refusal is thrown', () => {
  expect(() => bestFit([refuse('a'), refuse('b')])).toThrow(
    expect.objectContaining({ facts: { field: 'start', reason: 'b' } }),
  )
})

test('a bug is not passed over', () => {
  const bug = () => {
    throw new TypeError('a bug')
  }
  expect(() => bestFit([bug, fitWith(1)])).toThrow(TypeError)
})
