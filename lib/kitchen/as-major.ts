import 'server-only'
import type { Decimal } from '../calc/cost/decimal'
import { minorDigits } from '../words/format/minor-digits'

/** Minor units of a currency as decimal text in major units, exact: '1.3' cents is '0.013'. */
export function asMajor(minor: Decimal, currency: string): string {
  return minor.dividedBy(10 ** minorDigits(currency)).toFixed()
}
