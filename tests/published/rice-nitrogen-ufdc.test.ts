import { fitCurve } from '@/lib/calc/dose-response/fit-curve'
import { payingDose } from '@/lib/calc/dose-response/paying-dose'
import { publishedCheck, type PublishedCheck } from '@/tests/support/published-check'

// The page prints sums and coefficients, not the single values: means by dose follow from the sums of products 9, 27,
// 87.75, 4.875 and 13.0875 with mean 6.333. Two values either side of each mean stand for its two replications.
const means = [
  [0, 5.35],
  [1.5, 6.675],
  [3, 6.975],
] as const
const rows = means.flatMap(([dose, y]) => [
  { dose, y: y - 0.05 },
  { dose, y: y + 0.05 },
])
const curve = { rows, model: 'quadratic' as const, confidence: 0.95 }

const check = (of: PublishedCheck['of'], what: string, expected: number, got: () => number, absolute: number) =>
  publishedCheck({
    of,
    what,
    source:
      'University of Florida Digital Collections, UF00080557, page 110: rice (t) on nitrogen (100 kg), price of both',
    status: 'published; means worked back from the printed sums',
    expected,
    got,
    tolerance: { absolute },
    why: 'half of the last printed digit',
  })

const fit = ['dose-response/fit-curve'] as const
check(fit, 'intercept', 5.35, () => fitCurve(curve).parameters[0]!.estimate, 0.0005)
check(fit, 'linear', 1.225, () => fitCurve(curve).parameters[1]!.estimate, 0.0005)
check(fit, 'quadratic', -0.228, () => fitCurve(curve).parameters[2]!.estimate, 0.0005)
check(fit, 'dose of the highest yield', 2.7, () => fitCurve(curve).vertex!.dose, 0.05)
// printed 6.99, from coefficients that were rounded before
check(fit, 'highest yield', 6.99, () => fitCurve(curve).vertex!.response, 0.01)
check(
  ['dose-response/paying-dose'],
  'dose of the highest profit, nitrogen at 440 and rice at 2800',
  2.34,
  () => payingDose({ ...curve, doseUnitPriceMinor: '440', gainUnitWorthMinor: '2800' }).dose!.estimate,
  0.005,
)
