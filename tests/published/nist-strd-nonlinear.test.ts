import { fitRise } from '@/lib/calc/fermentation/fit-rise'
import { fitFirmness } from '@/lib/calc/staling/fit-firmness'
import { publishedCheck } from '@/tests/support/published-check'
import data from './data/nist-strd-nonlinear.json'

const points = (set: { x: readonly number[]; y: readonly number[] }) => set.x.map((x, i) => ({ x, y: set.y[i]! }))

const check = (
  id: string,
  of: 'fermentation/fit-rise' | 'staling/fit-firmness',
  what: string,
  expected: number,
  got: () => number,
) =>
  publishedCheck({
    id,
    of: [of],
    what,
    source: `NIST, Statistical Reference Datasets, nonlinear regression, ${id}`,
    status: 'published, certified',
    expected,
    got,
    tolerance: { relative: 1e-7 },
    why: 'certified to eleven digits; we stop where the sum of squares no longer changes, some eight digits of the parameters',
  })

const { rat42, misra1a, boxBod } = data
const rise = () => fitRise({ readings: points(rat42).map(({ x, y }) => ({ atMin: x, risePct: y })), kind: 'logistic' })
const [b1, b2, b3] = rat42.b as [number, number, number]
check('Rat42', 'fermentation/fit-rise', 'logistic: upper end b1', b1, () => rise().mostRisePct)
check(
  'Rat42',
  'fermentation/fit-rise',
  'logistic: steepest slope b1·b3/4',
  (b1 * b3) / 4,
  () => rise().steepestPctPerMin,
)
check('Rat42', 'fermentation/fit-rise', 'logistic: lag (b2 − 2)/b3', (b2 - 2) / b3, () => rise().lagMin)
check('Rat42', 'fermentation/fit-rise', 'standard deviation of b1', rat42.sd[0]!, () => rise().mostRiseStandardErrorPct)
check('Rat42', 'fermentation/fit-rise', 'residual sum of squares', rat42.rss, () => rise().residualSumSquares)

for (const [id, set] of [
  ['Misra1a', misra1a],
  ['BoxBOD', boxBod],
] as const) {
  const firming = () =>
    fitFirmness({ readings: points(set).map(({ x, y }) => ({ days: x, firmness: y })), startFirmness: 0 })
  check(id, 'staling/fit-firmness', 'b1·(1 − exp(−b2·x)): b1', set.b[0]!, () => firming().endFirmness)
  check(id, 'staling/fit-firmness', 'b1·(1 − exp(−b2·x)): b2', set.b[1]!, () => firming().ratePerDay)
  check(id, 'staling/fit-firmness', 'standard deviation of b1', set.sd[0]!, () => firming().endStandardError)
  check(id, 'staling/fit-firmness', 'standard deviation of b2', set.sd[1]!, () => firming().rateStandardError)
  check(id, 'staling/fit-firmness', 'residual sum of squares', set.rss, () => firming().residualSumSquares)
}
