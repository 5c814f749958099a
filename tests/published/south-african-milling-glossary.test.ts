import { doughMassForPiecesG } from '@/lib/calc/formula/dough-mass-for-pieces'
import { batchCost } from '@/lib/calc/cost/batch-cost'
import { Decimal } from '@/lib/calc/cost/decimal'
import { grossMarginPct } from '@/lib/calc/cost/gross-margin'
import { unitCosts } from '@/lib/calc/cost/unit-costs'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'South African milling company, glossary: batch 80 kg, piece 500 g, batch cost 172.35, price 4.50'
const costs = (goodPieces: number) =>
  unitCosts({
    totalMinor: new Decimal('17235'),
    plannedPieces: 160,
    goodPieces,
    goodMassG: 500 * goodPieces,
    goodVolumeMl: 2000 * goodPieces,
  })

publishedCheck({
  id: 'P-6.9',
  of: ['formula/dough-mass-for-pieces'],
  what: '160 pieces of 500 g take the batch of 80 kg',
  source,
  status: 'published',
  expected: 80_000,
  got: () =>
    doughMassForPiecesG({ pieces: 160, pieceMassG: 500, lossShares: [], losses: { on: 'dough', combine: 'added' } }),
  tolerance: { absolute: 0 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-6.9',
  of: ['cost/unit-costs'],
  what: 'cost of a loaf, cents',
  source,
  status: 'published',
  expected: 108,
  got: () => costs(160).perGoodPieceMinor.toNumber(),
  tolerance: { absolute: 0.5 },
  why: 'the source prints 1.08; unrounded 1.0772',
})
publishedCheck({
  id: 'P-6.9',
  of: ['cost/gross-margin', 'cost/unit-costs'],
  what: 'gross margin, %',
  source,
  status: 'published inputs',
  expected: 76.06,
  got: () => grossMarginPct({ priceMinor: new Decimal(450), costMinor: costs(160).perGoodPieceMinor }).toNumber(),
  tolerance: { absolute: 0.005 },
  why: 'half of the second decimal; the source prints 76 %',
})
publishedCheck({
  id: 'P-6.9',
  of: ['cost/batch-cost'],
  what: '80 kg at 2.154375 a kg are the batch cost, cents',
  source,
  status: 'published inputs',
  expected: 17_235,
  got: () =>
    batchCost({
      lines: [
        {
          lineId: 'dough',
          name: 'dough',
          massG: 80_000,
          prices: [{ validFrom: '2031-01-01', perKgMinor: '215.4375', currency: 'ZAR' }],
        },
      ],
      day: '2031-01-01',
    }).totalMinor.toNumber(),
  tolerance: { absolute: 0 },
  why: 'exact decimals',
})
