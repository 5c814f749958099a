import { doseChain } from '@/lib/calc/dosing/dose-chain'
import { publishedCheck } from '@/tests/support/published-check'

const asked = {
  doseMgPerKgFlour: 60,
  flourMassG: 4000,
  activeShare: 1,
  strengthShare: 1,
  strengthErrorShare: 0,
  coverageFactor: 2,
  mostCarrierG: 300,
  mostPremixG: 2000,
}
for (const [what, errorShare, scale, spread] of [
  [
    '5 g into 95 g on a 0.1 g scale',
    0.06,
    { resolutionG: 0.1, repeatabilityG: 0.05, capacityG: 1000 },
    0.02303307997666364,
  ],
  [
    '50 g into 950 g twice on a 1 g scale',
    0.05,
    { resolutionG: 1, repeatabilityG: 0.5, capacityG: 15_000 },
    0.023555962500322845,
  ],
] as const) {
  publishedCheck({
    of: ['dosing/dose-chain', 'weighing/plan-premix'],
    what: `spread of a dose of 0.24 g by a premix of ${what}, two standard deviations`,
    source: 'NumPy 2.4.6, tests/published/data/numpy-premix.py',
    status: 'computed with NumPy 2.4.6: weighed four million times, seed 20261126',
    expected: 2 * spread,
    got: () =>
      doseChain({ ...asked, errorShare, scales: [{ id: 'scale', ...scale }] }).weighingErrorShare ?? Number.NaN,
    tolerance: { relative: 0.003 },
    why: 'four million draws give a spread to 0.04 %; the first order of the error leaves some 0.1 %',
  })
}
