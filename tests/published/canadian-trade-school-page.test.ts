import { Decimal } from '@/lib/calc/cost/decimal'
import { usablePrice } from '@/lib/calc/cost/usable-price'
import { publishedCheck } from '@/tests/support/published-check'

const trimmed = () =>
  usablePrice({
    packMinor: new Decimal(1195),
    packMassG: 1000,
    pieces: null,
    freightMinor: new Decimal(0),
    freightMassG: 1000,
    preparedFromG: 5200,
    preparedToG: 4600,
    lossPct: 0,
  })
for (const [what, expected, got, absolute] of [
  ['5.2 kg trimmed to 4.6 kg: yield, % (printed 88.5)', 88.4615, () => trimmed().usableYieldPct, 5e-5],
  ['at 11.95 a kg: a kg that gets used, cents', 1350.8696, () => trimmed().usablePerKgMinor, 5e-5],
] as const) {
  publishedCheck({
    id: 'Q-11.3',
    of: ['cost/usable-price'],
    what,
    source: 'Canadian trade-school page',
    status: 'published inputs',
    expected,
    got: () => got().toNumber(),
    tolerance: { absolute },
    why: 'half of the last digit; the rounded yield is not carried on',
  })
}
