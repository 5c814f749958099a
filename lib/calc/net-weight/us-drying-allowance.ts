import { mustBeWithin } from '../checks'

/** What the handbook prints an allowance for, and bread, for which it prints none. */
export const US_DRYING_PRODUCTS = ['bread', 'flour'] as const
export type UsDryingProduct = (typeof US_DRYING_PRODUCTS)[number]

const SHARES = { bread: 0, flour: 0.03 } as const satisfies Record<UsDryingProduct, number>

/**
 * How much a package may have lost by drying out since it was packed, in the United States: it is added to the limit of the
 * mean and to that of a single package. Bread has no printed allowance, so none is made.
 * @param labelledG g, over 0 to 1,000,000
 * @returns g
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: NIST Handbook 133 (2026), chapter 2, table 2-3: flour 3 %.
 * @example flour of 907 g: 27.21 g; the handbook prints 27 g
 */
export function usDryingAllowanceG(q: { labelledG: number; product: UsDryingProduct }): number {
  return mustBeWithin('labelledG', q.labelledG, { over: 0, max: 1e6 }) * SHARES[q.product]
}
