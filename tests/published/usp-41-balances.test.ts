import { leastNetMassG } from '@/lib/calc/weighing/least-net-mass'
import { netWeightUncertaintyG } from '@/lib/calc/weighing/net-weight-uncertainty'
import { relativeDoseErrorShare } from '@/lib/calc/weighing/relative-dose-error'
import { publishedCheck } from '@/tests/support/published-check'

const source =
  'United States Pharmacopeia, general chapter 41, Balances: repeatability of at least 0.41 d, k = 2, 0.10 %'
const status = 'from memory'
const why = 'the chapter prints two digits; √(2/12) is 0.408'
const perfect = { resolutionG: 0.001, repeatabilityG: 0 }

publishedCheck({
  of: ['weighing/net-weight-uncertainty'],
  what: 'least standard deviation of a net weight, in steps of the scale',
  source,
  status,
  expected: 0.41,
  got: () => netWeightUncertaintyG(perfect) / perfect.resolutionG,
  tolerance: { absolute: 0.005 },
  why,
})
publishedCheck({
  of: ['weighing/least-net-mass'],
  what: 'least mass within 0.10 % at k = 2, in steps of the scale',
  source,
  status,
  expected: 820,
  got: () => leastNetMassG({ errorShare: 0.001, coverageFactor: 2, ...perfect }) / perfect.resolutionG,
  tolerance: { absolute: 5 },
  why,
})
publishedCheck({
  of: ['weighing/relative-dose-error'],
  what: 'relative error of 820 steps at k = 2',
  source,
  status,
  expected: 0.001,
  got: () => relativeDoseErrorShare({ netMassG: 820 * perfect.resolutionG, coverageFactor: 2, ...perfect }),
  tolerance: { absolute: 5e-6 },
  why,
})
