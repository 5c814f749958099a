import fc from 'fast-check'
import { expect, test } from 'vitest'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'
import { remlCriterion } from '@/lib/calc/mixed-model/reml-criterion'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'
import { denseV, mixedTrial, productsOf, transposed } from '@/tests/support/mixed-trials'

const shape = { arms: 3, blocks: 4, pieces: 3, batchSd: 1.2, unbalanced: true }
const seeds = fc.integer({ min: 0, max: 1e6 }).map(String)
const ratio = fc.double({ min: 0.05, max: 8, noNaN: true })

test('gradient and Hessian are the slopes of criterion and gradient, one factor and two', () => {
  const random = fc.constantFrom(['batch'], ['batch', 'block'], ['block', 'level'])
  fc.assert(
    fc.property(seeds, random, ratio, ratio, (seed, names, a, b) => {
      const { rows, arms } = mixedTrial(seed, shape)
      const { cross } = productsOf({ rows, model: { arms, random: names } })
      const at = names.length === 1 ? [a] : [a, b]
      const here = remlCriterion(cross, at)
      at.forEach((value, k) => {
        const step = 1e-4 * value
        const [up, down] = [step, -step].map((h) =>
          remlCriterion(
            cross,
            at.map((own, l) => (l === k ? own + h : own)),
          ),
        )
        const near = (slope: number, exact: number) =>
          expect(Math.abs(slope - exact)).toBeLessThan(1e-5 * (1 + Math.abs(exact)) + 1e-7 / step)
        near((up!.value - down!.value) / (2 * step), here.gradient[k]!)
        at.forEach((_, l) => near((up!.gradient[l]! - down!.gradient[l]!) / (2 * step), here.hessian[k]![l]!))
      })
    }),
    { numRuns: 60 },
  )
})

test('the value is −2 log of the restricted likelihood by whole matrices', () => {
  const { rows, arms } = mixedTrial('value', shape)
  const { cross, u, groups } = productsOf({ rows, model: { arms, random: ['batch'] } })
  const [x, y] = [u.map((row) => row.slice(0, cross.p)), u.map((row) => [row[cross.p]!])]
  const { inverse, logDet } = spdInverse(denseV(groups, [0.9]))
  const information = spdInverse(matrixProduct(transposed(x), inverse, x))
  const fit = matrixProduct(x, information.inverse, transposed(x), inverse, y)
  const left = y.map((row, i) => [row[0]! - fit[i]![0]!])
  const squares = matrixProduct(transposed(left), inverse, left)[0]![0]!
  const df = cross.n - cross.p
  const expected = logDet + information.logDet + df * (1 + Math.log((2 * Math.PI * squares) / df))
  expect(remlCriterion(cross, [0.9]).value).toBeCloseTo(expected, 9)
})

test('the expected Hessian is never indefinite', () => {
  fc.assert(
    fc.property(seeds, ratio, ratio, (seed, a, b) => {
      const { rows, arms } = mixedTrial(seed, shape)
      const { expected } = remlCriterion(productsOf({ rows, model: { arms, random: ['batch', 'block'] } }).cross, [
        a,
        b,
      ])
      expect(expected[0]![0]!).toBeGreaterThan(0)
      expect(expected[0]![0]! * expected[1]![1]!).toBeGreaterThanOrEqual(expected[0]![1]! * expected[1]![0]!)
    }),
    { numRuns: 40 },
  )
})
