import { describe } from 'vitest'
import { type GainPower, gainPower } from '@/lib/calc/plan/gain-power'
import { forLong } from '@/tests/support/long'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/power-noncentral-t.json'

// With next to no worthwhile difference 'better' is 'the interval lies above zero', whose chance the noncentral t gives.
const RUNS = forLong(40_000, 800_000)
const whole = { armBatchesPerBlock: 1, controlBatchesPerBlock: 1, loavesPerBatch: 1 }

type Design = Omit<Parameters<typeof gainPower>[0], 'seed' | 'runs' | 'worthwhile' | 'goodDirection' | 'confidence'>
const simulate = (design: Design): GainPower =>
  gainPower({ ...design, seed: 'noncentral', runs: RUNS, worthwhile: 1e-9, goodDirection: 'larger', confidence: 0.95 })

const designs: Record<string, Design> = {
  'pow-t-doc': {
    design: { ...whole, layout: 'no-blocks', blocks: 20 },
    spread: { blockSd: 0, batchSd: 1, loafSd: 0 },
    trueDifferences: [1],
  },
  'n-batches': {
    design: { ...whole, layout: 'no-blocks', blocks: 5, loavesPerBatch: 3 },
    spread: { blockSd: 0, batchSd: 40, loafSd: 30 },
    trueDifferences: [100],
  },
  'pow-paired': {
    design: { ...whole, layout: 'complete-blocks', blocks: 10 },
    spread: { blockSd: 100, batchSd: 40 / Math.SQRT2, loafSd: 0 },
    trueDifferences: [40],
  },
  'pow-dunnett': {
    design: { ...whole, layout: 'no-blocks', blocks: 6 },
    spread: { blockSd: 0, batchSd: 50, loafSd: 0 },
    trueDifferences: [80, 40],
  },
}

describe.each(cases)('$id', (c) => {
  const e = c.expected
  const expected = e.power_each ?? [e.achieved_power ?? e.power ?? NaN]
  expected.forEach((power, i) =>
    publishedCheck({
      of: ['plan/gain-power'],
      what: `chance that difference ${i + 1} is seen`,
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected: power,
      got: () => simulate(designs[c.id]!).arms[i]!.power,
      tolerance: (3.5 * Math.sqrt((power * (1 - power)) / RUNS)) / power,
      why: '3.5 Monte Carlo standard errors; the far tail, which the reference counts and we do not, is below 1e-4',
    }),
  )
  if (e.critical_value !== undefined) {
    publishedCheck({
      of: ['plan/gain-power'],
      what: 'critical value',
      source: c.source,
      status: `computed with ${c.computedWith}`,
      expected: e.critical_value,
      got: () => simulate(designs[c.id]!).criticalValue,
      tolerance: 1e-8,
      why: 'stated accuracy',
    })
  }
})

// A two-sample t test of batches at two-sided 5 %: each batch on its own, control and one arm.
for (const [cvPct, differencePct, perArm, power] of [
  [3, 5, 7, 0.8163],
  [3, 5, 6, 0.7397],
  [3, 5, 3, 0.347],
] as const) {
  publishedCheck({
    id: 'P-6.13',
    of: ['plan/gain-power'],
    what: `a difference of ${differencePct} % at a CV of ${cvPct} %, ${perArm} batches of each`,
    source: 'exact noncentral t, arithmetic',
    status: 'published inputs',
    expected: power,
    got: () =>
      simulate({
        design: { ...whole, layout: 'no-blocks', blocks: perArm },
        spread: { blockSd: 0, batchSd: cvPct, loafSd: 0 },
        trueDifferences: [differencePct],
      }).arms[0]!.power,
    tolerance: { absolute: 3.5 * Math.sqrt((power * (1 - power)) / RUNS) + 5e-4 },
    why: '3.5 Monte Carlo standard errors and the last digit given',
  })
}
