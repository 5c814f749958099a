import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

/** Weeks, or null for never. */
type Weeks = number | null

export type PayBack = {
  outcome: 'weeks' | 'at-once' | 'no-pay-back'
  /** Whole weeks until what was spent is back, rounded up. */
  weeks: Weeks
  /** With the gain at the upper and at the lower end of its interval. */
  leastWeeks: Weeks
  mostWeeks: Weeks
  netPerWeekMinor: Decimal
}

/**
 * After how many weeks a change pays back what it cost to bring in, or that it never does: spent / net gain of a week,
 * with net = gain · pieces − work · wage − whatever else each week costs.
 * @param onceMinor trial, new labels, all that is paid once, ≥ 0
 * @param gainPerPieceMinor, lower…, upper… what a piece gains over its extra cost, with the analysis' interval; may be a loss
 * @param piecesPerWeek ≥ 0; workMinPerWeek extra minutes (weighing, clean-down), ≥ 0; wagePerHourMinor ≥ 0
 * @param otherPerWeekMinor ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'interval-reversed'
 * Source: definition of the pay-back time; common practice, no source.
 */
export function payBack(q: {
  onceMinor: Decimal
  gainPerPieceMinor: Decimal
  lowerGainPerPieceMinor: Decimal
  upperGainPerPieceMinor: Decimal
  piecesPerWeek: number
  workMinPerWeek: number
  wagePerHourMinor: Decimal
  otherPerWeekMinor: Decimal
}): PayBack {
  mustBeAmount('onceMinor', q.onceMinor)
  mustBeAmount('gainPerPieceMinor', q.gainPerPieceMinor, null)
  mustBeAmount('lowerGainPerPieceMinor', q.lowerGainPerPieceMinor, null)
  mustBeAmount('upperGainPerPieceMinor', q.upperGainPerPieceMinor, null)
  mustBeAmount('wagePerHourMinor', q.wagePerHourMinor)
  mustBeAmount('otherPerWeekMinor', q.otherPerWeekMinor)
  mustBeWithin('piecesPerWeek', q.piecesPerWeek, { min: 0 })
  mustBeWithin('workMinPerWeek', q.workMinPerWeek, { min: 0 })
  if (
    q.lowerGainPerPieceMinor.greaterThan(q.gainPerPieceMinor) ||
    q.upperGainPerPieceMinor.lessThan(q.gainPerPieceMinor)
  ) {
    throw new CalcError('not-possible', {
      field: 'gainPerPieceMinor',
      value: q.gainPerPieceMinor.toString(),
      reason: 'interval-reversed',
    })
  }
  const weeklyMinor = q.wagePerHourMinor.times(new Decimal(q.workMinPerWeek)).dividedBy(60).plus(q.otherPerWeekMinor)
  const net = (gainMinor: Decimal) => gainMinor.times(new Decimal(q.piecesPerWeek)).minus(weeklyMinor)
  const netPerWeekMinor = net(q.gainPerPieceMinor)
  const weeks = weeksOf(q.onceMinor, netPerWeekMinor)
  return {
    outcome: weeks === null ? 'no-pay-back' : weeks === 0 ? 'at-once' : 'weeks',
    weeks,
    leastWeeks: weeksOf(q.onceMinor, net(q.upperGainPerPieceMinor)),
    mostWeeks: weeksOf(q.onceMinor, net(q.lowerGainPerPieceMinor)),
    netPerWeekMinor,
  }
}

function weeksOf(onceMinor: Decimal, netMinor: Decimal): Weeks {
  if (netMinor.lessThanOrEqualTo(0)) return null
  const weeks = onceMinor.dividedBy(netMinor).ceil().toNumber()
  return Number.isSafeInteger(weeks) ? weeks : null
}
