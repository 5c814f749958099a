import { answerOf } from '@/tests/support/answer-of'
import { publishedCheck } from '@/tests/support/published-check'

const toC = (f: number) => ((f - 32) * 5) / 9
/** 144 BTU/lb over 1 BTU/(lb·°F) is 144 °F of water, that is 80 K. */
const TRADE = { latentHeatJPerG: 80 * 4.186, waterSpecificHeatJPerGK: 4.186 }
const ice = { waterMassG: 1, iceTempC: 0, convention: 'replacing', ...TRADE }
const icePart = (tapF: number, wantedF: number) =>
  Number(answerOf('temperature/ice-mass', { ...ice, tapTempC: toC(tapF), wantedTempC: toC(wantedF) }).iceMassG)

for (const [tapF, wantedF, printed, worked] of [
  [70, 50, 0.109, 0.1099],
  [80, 50, 0.155, 0.1563],
  [60, 40, 0.115, 0.1163],
  [80, 0, 0.416, 0.4167],
  [70, -10, 0.44, 0.4396],
] as const) {
  publishedCheck({
    id: 'P-4.6',
    of: ['temperature/ice-mass'],
    what: `lb of ice per lb of water, tap ${tapF} °F, wanted ${wantedF} °F, as printed`,
    source: 'Bakery supplier, ice table',
    status: 'published',
    expected: printed,
    got: () => icePart(tapF, wantedF),
    tolerance: { absolute: 0.003 },
    why: 'the table cuts digits off, and its steps are not quite those of its own rule',
  })
  publishedCheck({
    id: 'P-4.6',
    of: ['temperature/ice-mass'],
    what: `the same worked out, ${tapF} to ${wantedF} °F`,
    source: 'Bakery supplier, ice table (its rule)',
    status: 'published inputs',
    expected: worked,
    got: () => icePart(tapF, wantedF),
    tolerance: { absolute: 5e-5 },
    why: 'half of the fourth decimal',
  })
  publishedCheck({
    id: 'P-4.6',
    of: ['temperature/water-source'],
    what: `ice where the tap is too warm, ${tapF} to ${wantedF} °F`,
    source: 'Bakery supplier, ice table (its rule)',
    status: 'published inputs',
    expected: worked,
    got: () =>
      Number(
        answerOf('temperature/water-source', {
          ...ice,
          wantedTempC: toC(wantedF),
          coldTempC: toC(tapF),
          hotTempC: 60,
          mostTempC: 50,
          mostIceShare: 1,
        }).iceMassG,
      ),
    tolerance: { absolute: 5e-5 },
    why: 'half of the fourth decimal',
  })
}
