import { huberFit } from '@/lib/calc/fitting/huber-fit'
import { learnFriction } from '@/lib/calc/temperature/learn-friction'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'statsmodels 0.15.0, tests/published/data/statsmodels-robust-fit.py'
const status = 'computed with statsmodels 0.15.0, RLM with HuberT(1.345)'

const loss = [42, 37, 37, 28, 18, 18, 19, 20, 15, 14, 14, 13, 11, 12, 8, 7, 8, 8, 9, 15, 15]
const air = [80, 80, 75, 62, 62, 62, 62, 62, 58, 58, 58, 58, 58, 58, 50, 50, 50, 50, 50, 56, 70]
const water = [27, 27, 25, 24, 22, 23, 24, 24, 23, 18, 18, 17, 18, 19, 18, 18, 19, 19, 20, 20, 20]
const acid = [89, 88, 90, 87, 87, 87, 93, 93, 87, 80, 89, 88, 82, 93, 89, 86, 72, 79, 80, 82, 91]
const stackLoss = () => huberFit({ x: air.map((value, i) => [1, value, water[i]!, acid[i]!]), y: loss })
for (const [what, expected, got] of [
  ['intercept', -41.026498352400296, () => stackLoss().coefficients[0]!],
  ['air flow', 0.8293843346001093, () => stackLoss().coefficients[1]!],
  ['water temperature', 0.9260659661966489, () => stackLoss().coefficients[2]!],
  ['acid', -0.12784672494578472, () => stackLoss().coefficients[3]!],
  ['spread', 2.4405360917210954, () => stackLoss().spread],
] as const) {
  publishedCheck({
    what: `robust fit of the stack loss data (Brownlee 1965): ${what}`,
    source,
    status,
    expected,
    got,
    tolerance: { relative: 1e-6 },
    why: 'both programs stop when the residuals no longer move',
  })
}

const first = [4, 4, 3, 5, 4, 3, 5, 4]
const second = [5, 7, 6, 4, 6, 8, 5, 3]
const perKg = [2745, 3501, 2988, 2459, 12_150, 3790, 2836, 1881]
const learned = () =>
  learnFriction({
    batches: perKg.map((joule, i) => ({
      batch: `batch ${i + 1}`,
      doughMassG: 10_000 + 500 * i,
      frictionJ: joule * (10 + 0.5 * i),
      firstSpeedMin: first[i]!,
      secondSpeedMin: second[i]!,
    })),
    plannedDoughMassG: 12_000,
    plannedFirstSpeedMin: 4,
    plannedSecondSpeedMin: 6,
  })
for (const [what, expected, got] of [
  ['first speed, J per kg and min', 158.91908509583214, () => learned().firstSpeedJPerKgMin ?? Number.NaN],
  ['second speed, J per kg and min', 415.51865645356077, () => learned().secondSpeedJPerKgMin ?? Number.NaN],
  ['spread', 36.96215051860402, () => learned().spreadJPerKg],
  ['weight of the bad reading', 0.005510799877619694, () => learned().setAside[0]?.weightShare ?? Number.NaN],
] as const) {
  publishedCheck({
    of: ['temperature/learn-friction'],
    what: `friction of a mixer from eight batches, one of them read wrong: ${what}`,
    source,
    status: `${status}; invented batches`,
    expected,
    got,
    tolerance: { relative: 1e-6 },
    why: 'both programs stop when the residuals no longer move',
  })
}
