import { Decimal } from '@/lib/calc/cost/decimal'
import { leastOrder } from '@/lib/calc/cost/least-order'
import { madeBatchCost } from '@/lib/calc/cost/made-batch-cost'
import { breakEvenPrice } from '@/lib/calc/cost/break-even-price'
import { payBack } from '@/lib/calc/cost/pay-back'
import { sameVolumePrice } from '@/lib/calc/cost/same-volume-price'
import { unitCosts } from '@/lib/calc/cost/unit-costs'
import { usablePrice } from '@/lib/calc/cost/usable-price'
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
    leastOrder({
      leastOrderG: 25_000,
      useGPerWeek: 200,
      bestBeforeWeeks: 50,
      perKgMinor: new Decimal(600),
    }).perUsedKgMinor.toNumber(),
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

publishedCheck({
  ...practice,
  id: 'Q-11.4',
  of: ['cost/usable-price'],
  what: 'sack of 25 kg at 18.45, freight 42.00 for 600 kg, 1.5 % lost: a kg used, cents',
  expected: 82.03045685,
  got: () =>
    usablePrice({
      packMinor: new Decimal(1845),
      packMassG: 25_000,
      pieces: null,
      freightMinor: new Decimal(4200),
      freightMassG: 600_000,
      preparedFromG: 1,
      preparedToG: 1,
      lossPct: 1.5,
    }).usablePerKgMinor.toNumber(),
  tolerance: { absolute: 5e-9 },
  why: 'half of the last digit worked out',
})
const batch = () =>
  unitCosts({ totalMinor: new Decimal(4620), plannedPieces: 96, goodPieces: 91, goodMassG: 91, goodVolumeMl: 91 })
publishedCheck({
  ...practice,
  id: 'Q-11.5',
  of: ['cost/unit-costs'],
  what: '46.20 for 96 planned: a piece, cents',
  expected: 48.125,
  got: () => batch().perPlannedPieceMinor.toNumber(),
  tolerance: { relative: 1e-12 },
})
publishedCheck({
  ...practice,
  id: 'Q-11.5',
  of: ['cost/unit-costs'],
  what: '46.20, 3 spoilt and 2 sampled of 96: a good piece, cents',
  expected: 50.76923,
  got: () => batch().perGoodPieceMinor.toNumber(),
  tolerance: { absolute: 5e-6 },
  why: 'half of the fifth decimal',
})
publishedCheck({
  ...practice,
  id: 'Q-11.6',
  of: ['cost/break-even-price'],
  what: 'improver at 0.25 % of 0.520 kg of flour that saves 14 g of dough at 0.64 a kg: it pays up to, cents a kg',
  expected: 689.23,
  got: () => {
    const found = breakEvenPrice({
      controlPerGoodPieceMinor: new Decimal('0.896'),
      gainPerGoodPieceMinor: new Decimal(0),
      armRestMinor: new Decimal(0),
      armGoodPieces: 1,
      addedMassG: 1.3,
    })
    return found.outcome === 'price' ? found.perKgMinor.toNumber() : Number.NaN
  },
  tolerance: { absolute: 0.005 },
  why: 'half of the second decimal',
})
/** Tin loaf of 600 g: 48 cents without the improver, 0.9 g of it in the test dough, whose rest costs 47.7 cents. */
const improver = (volumeRatio: number, controlMassG = 0) =>
  sameVolumePrice({
    volumeRatio,
    controlRestMinor: new Decimal(48),
    armRestMinor: new Decimal('47.7'),
    controlMassG: new Decimal(controlMassG),
    armMassG: new Decimal('0.9'),
  })
publishedCheck({
  ...practice,
  of: ['cost/same-volume-price'],
  what: '4 % more volume is worth 49.92 − 47.70 cents, for 0.9 g: cents a kg',
  expected: 2466.667,
  got: () => {
    const found = improver(1.04)
    return 'perKgMinor' in found ? found.perKgMinor.toNumber() : Number.NaN
  },
  tolerance: { absolute: 0.0005 },
  why: 'half of the third decimal',
})
publishedCheck({
  ...practice,
  of: ['cost/same-volume-price'],
  what: 'the same with 0.5 g of it in the control: 2.22 cents for 0.9 − 0.52 g, cents a kg',
  expected: 5842.105,
  got: () => {
    const found = improver(1.04, 0.5)
    return 'perKgMinor' in found ? found.perKgMinor.toNumber() : Number.NaN
  },
  tolerance: { absolute: 0.0005 },
  why: 'half of the third decimal',
})
publishedCheck({
  ...practice,
  of: ['cost/same-volume-price'],
  what: '1 % less volume is worth 47.52 cents, and the rest costs 47.70',
  expected: 'never',
  got: () => improver(0.99).outcome,
})
