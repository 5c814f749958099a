import { CalcError } from '../error'
import { projectedMoments } from './projected-moments'
import { spdInverse } from './spd-inverse'
import type { CrossProducts, Design } from './types'
import { weightedProducts } from './weighted-products'
import { withResidual } from './with-residual'

/** Share of a factor's information that must be its own. */
const OWN = 1e-9

/**
 * Demands that each variance can be told from the fixed effects, from the residual and from the other variance: the
 * expected information of all variances, whatever their size, must be of full rank.
 * @param cross from crossProducts, n > p; @param design that its columns are of
 * @throws CalcError 'not-possible' with field `random.<name>`: reason 'confounded' (value: the fixed term, or the other
 * random factor, that it cannot be told from) or 'one-piece-each' (it cannot be told from the residual)
 * Source: Searle, Casella & McCulloch (1992), Variance Components, section 6.6.
 */
export function mustBeIdentified(cross: CrossProducts, design: Design): void {
  const { n, p, names } = cross
  const zero = names.map(() => 0)
  const products = withResidual(weightedProducts(cross, zero), zero, n)
  const { doubleTraces } = projectedMoments(products)
  const refuse = (k: number, reason: string, value?: string) => {
    throw new CalcError('not-possible', {
      field: `random.${names[k]!}`,
      reason,
      ...(value === undefined ? {} : { value }),
    })
  }
  names.forEach((_, k) => {
    if (doubleTraces[k]![k]! > OWN * products.doubleTraces[k]![k]!) return
    // the first leading part of the fixed columns that leaves nothing of the factor
    for (let count = 1; count < p; count++) {
      if (!(projectedMoments(products, count).doubleTraces[k]![k]! > OWN * products.doubleTraces[k]![k]!))
        refuse(k, 'confounded', design.columns[count - 1]!.term)
    }
    refuse(k, 'confounded', design.columns[p - 1]!.term)
  })
  const size = doubleTraces.map((row, k) => Math.sqrt(row[k]!))
  const alike = (k: number, l: number) => doubleTraces[k]![l]! ** 2 >= (1 - OWN) * (size[k]! * size[l]!) ** 2
  names.forEach((_, k) => {
    if (alike(k, names.length)) refuse(k, 'one-piece-each')
  })
  if (names.length === 2 && alike(0, 1)) refuse(0, 'confounded', names[1])
  try {
    spdInverse(doubleTraces.map((row, k) => row.map((value, l) => value / (size[k]! * size[l]!))))
  } catch {
    refuse(0, 'confounded', names[1])
  }
}
