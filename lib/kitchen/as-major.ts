import 'server-only'
import type { Decimal } from '../calc/cost/decimal'

/** Minor units of a currency as decimal text in major units, exact: '1.3' cents is '0.013'. */
export function asMajor(minor: Decimal, currency: string): string {
  const { maximumFractionDigits: digits = 0 } = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions()
  return minor.dividedBy(10 ** digits).toFixed()
}
