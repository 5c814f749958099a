import 'server-only'
import type { Decimal } from '../../calc/cost/decimal'
import { asMajor } from '../as-major'
import type { CostedPiece } from './piece-costs'
import type { CostChange } from './signing-of-version'

/** A change of cost as a page gets it: decimal text in major units, not rounded. For those who see costs. */
export function shownCostChange({ before, after, differencePct, day, limitPct, isBeyondLimit }: CostChange) {
  const { perPieceMinor: was } = before
  const { perPieceMinor: is } = after
  const currency = before.currency === after.currency ? after.currency : null
  const latest = [before.latestPriceFrom, after.latestPriceFrom].flatMap((from) => from ?? []).sort()
  return {
    before: amountOf(was, before),
    after: amountOf(is, after),
    difference: was && is && currency ? asMajor(is.minus(was), currency) : null,
    differencePct: differencePct === null ? null : differencePct.toNumber(),
    currency,
    unpriced: [...new Set([...before.unpriced, ...after.unpriced])],
    mixedCurrencies: before.mixedCurrencies || after.mixedCurrencies || before.currency !== after.currency,
    day,
    latestPriceFrom: latest.at(-1) ?? null,
    limitPct,
    isBeyondLimit,
  }
}

export type ShownCostChange = ReturnType<typeof shownCostChange>

function amountOf(minor: Decimal | null, { currency }: CostedPiece): string | null {
  return minor && currency ? asMajor(minor, currency) : null
}
