import { Decimal as Shared } from 'decimal.js'

/**
 * The one decimal constructor for money, cloned so that nobody's settings elsewhere change it. Sums and products of
 * prices and masses are exact well within 40 digits; quotients are rounded there, half to even.
 */
export const Decimal = Shared.clone({ precision: 40, rounding: Shared.ROUND_HALF_EVEN, defaults: true })

export type Decimal = InstanceType<typeof Decimal>
