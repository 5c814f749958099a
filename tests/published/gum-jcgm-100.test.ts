import { calibrateGauge } from '@/lib/calc/loaf/calibrate-gauge'
import { summariseReadings } from '@/lib/calc/loaf/summarise-readings'
import { netWeightUncertaintyG } from '@/lib/calc/weighing/net-weight-uncertainty'
import { planPremix } from '@/lib/calc/weighing/plan-premix'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'JCGM 100:2008, Guide to the expression of uncertainty in measurement'

publishedCheck({
  id: 'GUM-F.2.2.1',
  of: ['weighing/net-weight-uncertainty'],
  what: 'standard uncertainty of one digital reading of resolution 1 is 0.29; a net weight is two readings',
  source: `${source}, F.2.2.1`,
  status: 'from memory',
  expected: 0.29,
  got: () => netWeightUncertaintyG({ resolutionG: 1, repeatabilityG: 0 }) / Math.SQRT2,
  tolerance: { absolute: 0.005 },
  why: 'the guide prints two digits',
})

/** Twenty readings of a temperature. */
const readings = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2,
  101.57, 101.84, 102.36, 102.72,
]
const summary = () => summariseReadings(readings)
const gauge = () => calibrateGauge({ readingsMl: readings, blockVolumeMl: 100, blockUncertaintyMl: 0 })
for (const [what, of, expected, got] of [
  ['mean', 'loaf/summarise-readings', 100.145, () => summary().mean],
  ['standard deviation', 'loaf/summarise-readings', 1.489, () => summary().sd ?? Number.NaN],
  [
    'standard deviation, as a gauge on a block of 100',
    'loaf/calibrate-gauge',
    1.489,
    () => gauge().repeatabilityMl ?? Number.NaN,
  ],
  ['standard deviation of the mean', 'loaf/calibrate-gauge', 0.333, () => gauge().offsetUncertaintyMl ?? Number.NaN],
] as const) {
  publishedCheck({
    id: 'GUM-4.4.3',
    of: [of],
    what: `twenty readings: ${what}`,
    source: `${source}, 4.4.3 and table 1`,
    status: 'from memory',
    expected,
    got,
    tolerance: { absolute: 5e-4 },
    why: 'printed with three decimals',
  })
}

/** One scale, so that only the way of mixing is left to choose. */
const scale = { id: 'fine', resolutionG: 0.1, repeatabilityG: 0.05, capacityG: 5000 }
const question = {
  doseG: 0.5,
  errorShare: 0.05,
  coverageFactor: 2,
  scales: [scale],
  mostCarrierG: 200,
  mostPremixG: 2000,
}

/** Relative standard uncertainty of product in the portion by the law of propagation, with slopes taken numerically. */
function propagated(masses: readonly number[], productOf: (masses: readonly number[]) => number): number {
  const u = netWeightUncertaintyG(scale)
  const variance = masses.reduce((sum, massG, i) => {
    const step = massG * 1e-5
    const at = (by: number) => productOf(masses.map((one, j) => (i === j ? one + by : one)))
    return sum + (((at(step) - at(-step)) / (2 * step)) * u) ** 2
  }, 0)
  return Math.sqrt(variance) / productOf(masses)
}
publishedCheck({
  id: 'GUM-5.1.2',
  of: ['weighing/plan-premix'],
  what: 'error of a dose by premix: product = portion × take / (take + carrier), three weighings',
  source: `${source}, 5.1.2, law of propagation of uncertainty (masses made up)`,
  status: 'published inputs',
  expected: (() => {
    const plan = planPremix(question)
    const step = plan.outcome === 'premix' && plan.steps.length === 1 ? plan.steps[0] : undefined
    if (plan.outcome !== 'premix' || step === undefined) throw new Error('the example is one premix')
    return (
      2 *
      propagated(
        [plan.portionG, step.takeG, step.carrierG],
        ([portion = 0, take = 0, carrier = 0]) => (portion * take) / (take + carrier),
      )
    )
  })(),
  got: () => {
    const plan = planPremix(question)
    return plan.outcome === 'premix' ? plan.errorShare : Number.NaN
  },
  tolerance: { relative: 1e-6 },
  why: 'numerical slopes',
})
