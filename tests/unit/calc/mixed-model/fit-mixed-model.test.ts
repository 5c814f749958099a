import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { splitPlot } from '@/lib/calc/analysis/split-plot'
import { type MixedFit, fitMixedModel } from '@/lib/calc/mixed-model/fit-mixed-model'
import type { MixedModel, MixedRow } from '@/lib/calc/mixed-model/types'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { shuffle } from '@/lib/calc/random/shuffle'
import { forLong } from '@/tests/support/long'
import { mixedTrial } from '@/tests/support/mixed-trials'

const seeds = fc.integer({ min: 0, max: 1e6 }).map(String)
const runs = { numRuns: forLong(30, 300) }
const close = (got: number, expected: number, digits = 8) =>
  expect(Math.abs(got - expected), `${got} for ${expected}`).toBeLessThan(10 ** -digits * (1 + Math.abs(expected)))

/** Figures that neither the order of rows nor the level called first may change. */
function figuresOf({ differences, residualVariance, varianceComponents, tests, remlCriterion }: MixedFit): number[] {
  return [
    remlCriterion,
    residualVariance,
    ...varianceComponents.map(({ variance }) => variance),
    ...differences.flatMap(({ estimate, se, satterthwaite, kenwardRoger }) => [
      estimate,
      se,
      satterthwaite?.df ?? 0,
      kenwardRoger?.se ?? 0,
      kenwardRoger?.df ?? 0,
    ]),
    ...tests.flatMap(({ kenwardRoger }) => [kenwardRoger?.f ?? 0, kenwardRoger?.df2 ?? 0]),
  ]
}
const alike = (a: MixedFit, b: MixedFit) => figuresOf(a).forEach((value, i) => close(figuresOf(b)[i]!, value, 7))

describe('balanced data give the classical tables', () => {
  test('split plot: the arm against batches, level and interaction against pieces', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { rows, arms } = mixedTrial(seed, { arms: 3, blocks: 4, pieces: 2, batchSd: 3 })
        const fit = fitMixedModel({
          rows,
          model: { arms, fixed: ['block', 'level'], byArm: 'level', random: ['batch'] },
        })
        fc.pre(!fit.boundary)
        const classical = splitPlot({
          rows: rows.map(({ arm, factors, y }) => ({ arm, block: factors.block!, level: factors.level!, y })),
          arms,
          levels: ['0', '1'],
        })
        for (const [term, i] of [
          ['arm', 1],
          ['level', 3],
          ['arm-by-level', 4],
        ] as const) {
          const { satterthwaite, kenwardRoger } = fit.tests.find((own) => own.term === term)!
          for (const own of [satterthwaite!, kenwardRoger!]) {
            expect(own.df1).toBe(classical.anova[i].df)
            close(own.df2, classical.anova[i === 1 ? 2 : 5].df, 6)
            close(own.f, classical.anova[i].f!)
            close(own.p, classical.anova[i].p!)
          }
        }
        for (const { se, satterthwaite, kenwardRoger } of fit.differences) {
          close(se, classical.armDifferenceSe)
          close(kenwardRoger!.se, classical.armDifferenceSe)
          close(satterthwaite!.df, classical.armDifferenceDf, 6)
          close(kenwardRoger!.df, classical.armDifferenceDf, 6)
        }
        fit.armMeans.forEach(({ estimate }, i) => close(estimate, classical.armMeans[i]!.mean))
        close(fit.residualVariance, classical.anova[5].meanSquare)
        close(fit.varianceComponents[0]!.variance, (classical.anova[2].meanSquare - classical.anova[5].meanSquare) / 2)
      }),
      runs,
    )
  })

  test('loaves in batches, with blocks and without: the analysis of batch means', () => {
    fc.assert(
      fc.property(seeds, fc.boolean(), (seed, blocked) => {
        const { rows, arms } = mixedTrial(seed, { arms: 4, blocks: 3, pieces: 3, batchSd: 3 })
        const fit = fitMixedModel({ rows, model: { arms, fixed: blocked ? ['block'] : [], random: ['batch'] } })
        fc.pre(!fit.boundary)
        const readings = rows.map(({ arm, factors, y }, i) => ({
          arm,
          ...(blocked ? { block: factors.block! } : {}),
          batch: factors.batch!,
          loaf: String(i),
          value: y,
        }))
        const classical = analyseBatches({
          readings,
          arms,
          confidence: 0.95,
          alternative: 'two-sided',
          scale: 'plain',
        }).fit
        fit.differences.forEach(({ estimate, se, satterthwaite, kenwardRoger }, i) => {
          const own = classical.differences[i]!
          close(estimate, own.estimate)
          close(se, own.se)
          for (const { df, p } of [satterthwaite!, kenwardRoger!]) {
            close(df, own.df, 6)
            close(p, own.p)
          }
        })
      }),
      runs,
    )
  })
})

describe('of any data', () => {
  const models: Omit<MixedModel, 'arms'>[] = [
    { random: ['batch'] },
    { fixed: ['block', 'level'], covariates: ['doughTempC'], random: ['batch'] },
    { fixed: ['level'], byArm: 'level', random: ['batch', 'block'] },
    { covariates: ['doughTempC'], random: ['level', 'block'] },
  ]
  const trial = fc
    .record({ seed: seeds, model: fc.constantFrom(...models), batchSd: fc.constantFrom(0.1, 1, 3) })
    .map(({ seed, model, batchSd }) => {
      const { rows, arms } = mixedTrial(seed, {
        arms: 3,
        blocks: 5,
        pieces: 4,
        batchSd,
        blockSd: 1.5,
        unbalanced: true,
      })
      return { seed, rows, model: { arms, ...model } }
    })
  const changed = (rows: readonly MixedRow[], y: (own: number) => number) =>
    rows.map((row) => ({ ...row, y: y(row.y) }))

  test('the order of rows does not matter', () => {
    fc.assert(
      fc.property(trial, ({ seed, rows, model }) => {
        alike(fitMixedModel({ rows, model }), fitMixedModel({ rows: shuffle(seededRandom(seed), rows), model }))
      }),
      runs,
    )
  })

  test('a constant added to every value moves intercept and means, and nothing else', () => {
    fc.assert(
      fc.property(trial, ({ rows, model }) => {
        const [one, two] = [
          fitMixedModel({ rows, model }),
          fitMixedModel({ rows: changed(rows, (y) => y + 1000), model }),
        ]
        alike(one, two)
        close(two.intercept.estimate - one.intercept.estimate, 1000)
        two.armMeans.forEach(({ estimate }, i) => close(estimate - one.armMeans[i]!.estimate, 1000))
      }),
      runs,
    )
  })

  test('another unit scales estimates and standard errors, and leaves degrees of freedom and F', () => {
    fc.assert(
      fc.property(trial, fc.constantFrom(1e-6, -3, 1e9), ({ rows, model }, factor) => {
        const [one, two] = [
          fitMixedModel({ rows, model }),
          fitMixedModel({ rows: changed(rows, (y) => factor * y), model }),
        ]
        close(two.residualVariance / factor ** 2, one.residualVariance)
        two.differences.forEach((own, i) => {
          const other = one.differences[i]!
          close(own.estimate / factor, other.estimate)
          close(own.se / Math.abs(factor), other.se)
          close(own.kenwardRoger?.df ?? 0, other.kenwardRoger?.df ?? 0, 7)
        })
        two.tests.forEach((own, i) => close(own.kenwardRoger?.f ?? 0, one.tests[i]!.kenwardRoger?.f ?? 0, 7))
      }),
      runs,
    )
  })

  test('every figure is finite, every standard error and every df above zero', () => {
    fc.assert(
      fc.property(trial, ({ rows, model }) => {
        const fit = fitMixedModel({ rows, model })
        expect(figuresOf(fit).every(Number.isFinite)).toBe(true)
        for (const own of [fit.intercept, ...fit.coefficients, ...fit.armMeans]) {
          for (const value of [
            own.se,
            own.satterthwaite?.df ?? 1,
            own.kenwardRoger?.df ?? 1,
            own.kenwardRoger?.se ?? 1,
          ])
            expect(value).toBeGreaterThan(0)
        }
        expect(fit.boundary).toBe(fit.varianceComponents.some(({ variance }) => variance === 0))
        expect(fit.atZero).toEqual(
          fit.varianceComponents.flatMap(({ name, variance }) => (variance === 0 ? [name] : [])),
        )
        expect(fit.boundary).toBe(
          fit.warnings.some((own) => own === 'variance-at-zero-use-batch-means' || own === 'variance-at-zero-left-out'),
        )
        expect(fit.warnings.includes('variance-at-zero-use-batch-means')).toBe(fit.intercept.satterthwaite === null)
      }),
      runs,
    )
  })

  test('pieces entered twice lend a balanced comparison of arms nothing', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { rows, arms } = mixedTrial(seed, { arms: 3, blocks: 4, pieces: 2, batchSd: 2 })
        const model: MixedModel = { arms, fixed: ['block'], random: ['batch'] }
        const [one, two] = [fitMixedModel({ rows, model }), fitMixedModel({ rows: [...rows, ...rows], model })]
        fc.pre(!one.boundary)
        two.differences.forEach(({ estimate, se, kenwardRoger }, i) => {
          close(estimate, one.differences[i]!.estimate)
          close(se, one.differences[i]!.se)
          close(kenwardRoger!.df, one.differences[i]!.kenwardRoger!.df, 6)
        })
      }),
      runs,
    )
  })
})

describe('a variance at zero', () => {
  const nested = (seed: string, blockSd: number, batchSd: number) =>
    mixedTrial(seed, { arms: 3, blocks: 5, pieces: 3, batchSd, blockSd, unbalanced: true })

  test('of blocks is left out, and the rest is what the fit without blocks gives', () => {
    let met = 0
    for (let seed = 0; seed < 40; seed++) {
      const { rows, arms } = nested(String(seed), 0, 3)
      const fit = fitMixedModel({ rows, model: { arms, random: ['batch', 'block'] } })
      if (!fit.atZero.includes('block') || fit.atZero.includes('batch')) continue
      met++
      const without = fitMixedModel({ rows, model: { arms, random: ['batch'] } })
      alike(without, { ...fit, varianceComponents: fit.varianceComponents.filter(({ name }) => name === 'batch') })
      expect(fit.differences.every(({ kenwardRoger }) => kenwardRoger !== null)).toBe(true)
      expect(fit.warnings).toContain('variance-at-zero-left-out')
    }
    expect(met).toBeGreaterThan(5)
  })

  test('of batches leaves nothing to test arms by: pieces are no repeats of an arm', () => {
    let met = 0
    for (let seed = 0; seed < 40; seed++) {
      const { rows, arms } = nested(String(seed), 3, 0)
      const fit = fitMixedModel({ rows, model: { arms, random: ['batch', 'block'] } })
      if (!fit.atZero.includes('batch')) continue
      met++
      expect(
        fit.differences.every(({ kenwardRoger, satterthwaite }) => kenwardRoger === null && satterthwaite === null),
      ).toBe(true)
      expect(fit.warnings).toEqual(['variance-at-zero-use-batch-means'])
    }
    expect(met).toBeGreaterThan(5)
  })
})

test('the test of batches against pieces is that of the classical table, and of the batches alone', () => {
  const { rows, arms } = mixedTrial('table', { arms: 3, blocks: 4, pieces: 2, batchSd: 3 })
  const fit = fitMixedModel({ rows, model: { arms, fixed: ['block', 'level'], byArm: 'level', random: ['batch'] } })
  const { anova } = splitPlot({
    rows: rows.map(({ arm, factors, y }) => ({ arm, block: factors.block!, level: factors.level!, y })),
    arms,
    levels: ['0', '1'],
  })
  const own = fit.varianceComponents[0]!.test!
  expect([own.df1, own.df2]).toEqual([anova[2].df, anova[5].df])
  close(own.f, anova[2].meanSquare / anova[5].meanSquare)
  expect(
    fitMixedModel({ rows, model: { arms, random: ['batch', 'block'] } }).varianceComponents.map(
      ({ name, test: tested }) => [name, tested === null],
    ),
  ).toEqual([
    ['batch', false],
    ['block', true],
  ])
})

test('a stated order of levels makes every coefficient independent of the order of rows', () => {
  const { rows, arms } = mixedTrial('order', { arms: 2, blocks: 4, pieces: 2, batchSd: 2 })
  const model: MixedModel = {
    arms,
    fixed: ['block', 'level'],
    levelOrder: { block: ['2', '0', '3', '1'], level: ['1', '0'] },
    random: ['batch'],
  }
  const [one, two] = [fitMixedModel({ rows, model }), fitMixedModel({ rows: [...rows].reverse(), model })]
  expect(one.levelOrder).toEqual(model.levelOrder)
  expect(two.coefficients.map(({ term, level }) => [term, level])).toEqual(
    one.coefficients.map(({ term, level }) => [term, level]),
  )
  two.coefficients.forEach(({ estimate }, i) => close(estimate, one.coefficients[i]!.estimate))
  close(two.intercept.estimate, one.intercept.estimate)
})

describe('many values are no more work than their batches', () => {
  const many = (batches: number, each: number) =>
    mixedTrial('many', { arms: 2, blocks: batches / 2, pieces: each, batchSd: 1 })

  test.each([
    [10, 1000],
    [5000, 2],
  ])(
    '10,000 values in %i batches of %i',
    (batches, each) => {
      const { rows, arms } = many(batches, each)
      expect(
        fitMixedModel({ rows, model: { arms, covariates: ['doughTempC'], fixed: ['level'], random: ['batch'] } }).n,
      ).toBe(10_000)
    },
    10_000,
  )

  test('batches within 2500 random blocks', () => {
    const { rows, arms } = many(5000, 2)
    expect(
      fitMixedModel({ rows, model: { arms, random: ['batch', 'block'] } }).varianceComponents.map(
        ({ levels }) => levels,
      ),
    ).toEqual([5000, 2500])
  }, 10_000)
})

describe('what cannot be told is refused before it is fitted', () => {
  const { rows, arms } = mixedTrial('refused', { arms: 2, blocks: 3, pieces: 2, batchSd: 1 })
  const model: MixedModel = { arms, random: ['batch'] }
  const changed = (y: (i: number) => number) => rows.map((row, i) => ({ ...row, y: y(i) }))

  test.each<[string, readonly MixedRow[], string]>([
    ['no rows', [], 'empty'],
    ['a value that is no number', changed((i) => (i === 3 ? NaN : i)), 'rows[3].y'],
    ['an infinite value', changed((i) => (i === 3 ? Infinity : i)), 'rows[3].y'],
    ['a value beyond any measure', changed((i) => (i === 3 ? 1e101 : i)), 'rows[3].y'],
    ['identical values', changed(() => 7.3), 'zero-variance'],
    ['identical values within each arm', changed((i) => (rows[i]!.arm === arms[0] ? 0.1 : 0.7)), 'zero-variance'],
    [
      'pieces of a batch alike',
      changed(
        (i) =>
          Number(rows[i]!.factors.block) ** 2 + (rows[i]!.arm === arms[0] ? 0.1 : 0.7 * Number(rows[i]!.factors.block)),
      ),
      'zero-variance',
    ],
    ['one loaf', rows.slice(0, 1).map((row) => ({ ...row })), 'arm-without-rows'],
    ['one loaf of each arm', [rows[0]!, rows[2]!], 'no-residual-df'],
    ['one loaf of each batch', rows.filter((_, i) => i % 2 === 0), 'one-piece-each'],
    ['one batch of each arm', rows.slice(0, 4), 'confounded'],
  ])('%s', (_, own, reason) => {
    expect(() => fitMixedModel({ rows: own, model })).toThrow(reason)
  })
})
