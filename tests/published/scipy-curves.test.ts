import { equivalentMinutes } from '@/lib/calc/fermentation/equivalent-minutes'
import { fitRise } from '@/lib/calc/fermentation/fit-rise'
import type { SpeedRule } from '@/lib/calc/fermentation/speed-rules'
import { timeToRise } from '@/lib/calc/fermentation/time-to-rise'
import { fitFirmness } from '@/lib/calc/staling/fit-firmness'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'SciPy 1.17.1, tests/published/data/scipy-curves.py'
const status = 'computed with SciPy 1.17.1, curve_fit, brentq, quad; invented readings'

const rises = [0, 4, 13, 31, 52, 78, 97, 114, 126, 137]
const readings = [0, 15, 30, 45, 60, 75, 90, 105, 120, 150].map((atMin, i) => ({ atMin, risePct: rises[i]! }))
const reference = {
  gompertz: {
    fit: [148.1316045088237, 1.6148804501527065, 26.736363150502306],
    errors: [1.664240556814887, 0.027638423668785453, 0.6958405010388854],
    to80: [76.82741358244361, 0.4120876352163984, 75.8529811664294, 77.80184599845782],
  },
  logistic: {
    fit: [137.00021952564703, 1.7328606628638683, 31.297657792082514],
    errors: [2.945921219117185, 0.0792178676011693, 1.9275471809720943],
    to80: [77.52751601981166, 1.061036958786604, 75.0185622952286, 80.03646974439471],
  },
}
for (const kind of ['gompertz', 'logistic'] as const) {
  const rise = () => fitRise({ readings, kind })
  const time = () => timeToRise({ readings, kind, targetRisePct: 80, confidenceShare: 0.95 })
  const { fit, errors, to80 } = reference[kind]
  const checks = [
    ['most rise', fit[0], () => rise().mostRisePct],
    ['steepest slope', fit[1], () => rise().steepestPctPerMin],
    ['lag', fit[2], () => rise().lagMin],
    ['standard error of most rise', errors[0], () => rise().mostRiseStandardErrorPct],
    ['standard error of lag', errors[2], () => rise().lagStandardErrorMin],
    ['time to 80 %', to80[0], () => time().atMin],
    ['its standard error', to80[1], () => time().standardErrorMin],
    ['upper end of its 95 % interval', to80[3], () => time().upperMin],
  ] as const
  for (const [what, expected, got] of checks) {
    publishedCheck({
      of: ['fermentation/fit-rise', 'fermentation/time-to-rise'],
      what: `${kind} rise of a dough: ${what}`,
      source,
      status,
      expected: expected!,
      got,
      tolerance: { relative: 1e-7 },
      why: 'both programs stop where the sum of squares no longer changes, some eight digits of the parameters',
    })
  }
}

const firmness = [2.1, 1.9, 4.2, 4.6, 6.1, 5.7, 8.2, 7.9, 9.1, 9.5]
const firming = () =>
  fitFirmness({
    readings: [0, 0, 1, 1, 2, 2, 4, 4, 7, 7].map((days, i) => ({ days, firmness: firmness[i]! })),
    startFirmness: null,
  })
for (const [what, expected, got] of [
  ['start', 2.012947981872858, () => firming().startFirmness],
  ['end', 10.054591889451398, () => firming().endFirmness],
  ['rate', 0.34090689563255105, () => firming().ratePerDay],
  ['standard error of the start', 0.1463215212699591, () => firming().startStandardError ?? Number.NaN],
  ['standard error of the end', 0.29767761450150726, () => firming().endStandardError],
  ['standard error of the rate', 0.031043883142371834, () => firming().rateStandardError],
] as const) {
  publishedCheck({
    of: ['staling/fit-firmness'],
    what: `firming fitted with start, end and rate: ${what}`,
    source,
    status,
    expected,
    got,
    tolerance: { relative: 1e-6 },
    why: 'curve_fit takes its standard errors from numeric slopes, good to some seven digits',
  })
}

const record = [
  [0, 24],
  [30, 26],
  [90, 30.5],
  [120, 31],
] as const
const minutesOf = (points: readonly (readonly [number, number])[], wanted: SpeedRule) =>
  equivalentMinutes({
    readings: points.map(([atMin, doughTempC]) => ({ atMin, doughTempC })),
    referenceTempC: 27,
  }).rules.find(({ rule }) => rule === wanted)!.minutes
for (const [what, expected, got] of [
  ['by growth', 122.58138876640375, () => minutesOf(record, 'cardinal-temperatures')],
  ['by 10 % for one °C', 135.83455554134179, () => minutesOf(record, 'ten-pct-per-degree')],
  ['by a Q10 of 2', 130.7405988153696, () => minutesOf(record, 'q10-of-2')],
  [
    'by growth, through the cold end of the yeast’s range',
    31.038963846219186,
    () =>
      minutesOf(
        [
          [0, -5],
          [60, 45],
        ],
        'cardinal-temperatures',
      ),
  ],
] as const) {
  publishedCheck({
    of: ['fermentation/equivalent-minutes'],
    what: `minutes at 27 °C of a temperature record, ${what}`,
    source,
    status,
    expected,
    got,
    tolerance: { relative: 1e-6 },
    why: 'stated accuracy of the strips',
  })
}
