import { Decimal } from '@/lib/calc/cost/decimal'
import { leastOrder } from '@/lib/calc/cost/least-order'
import { madeBatchCost } from '@/lib/calc/cost/made-batch-cost'
import { payBack } from '@/lib/calc/cost/pay-back'
import { publishedCheck } from '@/tests/support/published-check'

const practice = {
  source: 'rules of bakery costing: direct cost, pay-back time, least order',
  status: 'common practice, no source; figures made up, answers worked by hand',
  why: 'exact arithmetic',
}
const none = new Decimal(0)
const gain = (perPiece: number) => ({
  gainPerPieceMinor: new Decimal(perPiece),
  lowerGainPerPieceMinor: new Decimal(perPiece),
  upperGainPerPieceMinor: new Decimal(perPiece),
})

publishedCheck({
  ...practice,
  of: ['cost/pay-back'],
  what: '350.00 spent, 5 cents a piece on 800 a week, half an hour of work at 20.00: 350 / (40 − 10) weeks, rounded up',
  expected: 12,
  got: () =>
    payBack({
      onceMinor: new Decimal(35_000),
      ...gain(5),
      piecesPerWeek: 800,
      workMinPerWeek: 30,
      wagePerHourMinor: new Decimal(2000),
      otherPerWeekMinor: none,
    }).weeks ?? Number.NaN,
  tolerance: { absolute: 0 },
})
publishedCheck({
  ...practice,
  of: ['cost/pay-back'],
  what: 'the same at 1 cent a piece: a week brings 8.00 and costs 10.00',
  expected: 'no-pay-back',
  got: () =>
    payBack({
      onceMinor: new Decimal(35_000),
      ...gain(1),
      piecesPerWeek: 800,
      workMinPerWeek: 30,
      wagePerHourMinor: new Decimal(2000),
      otherPerWeekMinor: none,
    }).outcome,
})
publishedCheck({
  ...practice,
  of: ['cost/least-order'],
  what: '25 kg at 6.00, 200 g a week, kept for 50 weeks: 10 kg are used, so a kg that is used costs 15.00',
  expected: 1500,
  got: () =>
    leastOrder({ leastOrderG: 25_000, useGPerWeek: 200, bestBeforeWeeks: 50, perKgMinor: new Decimal(600) }).perUsedKgMinor.toNumber(),
  tolerance: { relative: 1e-12 },
})
publishedCheck({
  ...practice,
  of: ['cost/made-batch-cost'],
  what: '24.00 of ingredients, three quarters of an hour at 28.00 and 12.5 kWh at 0.30: 24 + 21 + 3.75',
  expected: 4875,
  got: () =>
    madeBatchCost({
      ingredientsMinor: new Decimal(2400),
      workMin: 45,
      wagePerHourMinor: new Decimal(2800),
      energyKwh: 12.5,
      pricePerKwhMinor: new Decimal(30),
    }).totalMinor.toNumber(),
  tolerance: { absolute: 0 },
})
