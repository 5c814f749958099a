import { netWeightUncertaintyG } from '@/lib/calc/weighing/net-weight-uncertainty'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'GUM-F.2.2.1',
  of: ['weighing/net-weight-uncertainty'],
  what: 'standard uncertainty of one digital reading of resolution 1 is 0.29; a net weight is two readings',
  source: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement, F.2.2.1',
  status: 'from memory',
  expected: 0.29,
  got: () => netWeightUncertaintyG({ resolutionG: 1, repeatabilityG: 0 }) / Math.SQRT2,
  tolerance: { absolute: 0.005 },
  why: 'the guide prints two digits',
})
