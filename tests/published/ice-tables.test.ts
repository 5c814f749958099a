import { ICE_CONSTANTS, iceHeatJPerG } from '@/lib/calc/temperature/ice-heat'
import { iceMassG } from '@/lib/calc/temperature/ice-mass'
import { publishedCheck } from '@/tests/support/published-check'

const toC = (f: number) => ((f - 32) * 5) / 9
/** 144 BTU/lb over 1 BTU/(lb·°F) is 144 °F of water, that is 80 K. */
const TRADE = { ...ICE_CONSTANTS, latentHeatJPerG: 80 * ICE_CONSTANTS.waterSpecificHeatJPerGK }
const icePart = (tapF: number, wantedF: number) =>
  iceMassG({
    waterMassG: 1,
    tapTempC: toC(tapF),
    wantedTempC: toC(wantedF),
    iceTempC: 0,
    convention: 'replacing',
    constants: TRADE,
  })

publishedCheck({
  id: 'P-4.5',
  of: ['temperature/ice-mass'],
  what: 'ice = water x (tap - wanted) / (tap + 112) in °F, here 75 to 45 °F',
  source: 'US trade rule for ice; 112 = 144 - 32',
  status: 'common practice, no source',
  expected: 30 / 187,
  got: () => icePart(75, 45),
  tolerance: { relative: 1e-12 },
  why: 'the rule is the same formula in another unit',
})
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
    source: 'rule of the table',
    status: 'published inputs',
    expected: worked,
    got: () => icePart(tapF, wantedF),
    tolerance: { absolute: 5e-5 },
    why: 'half of the fourth decimal',
  })
}
publishedCheck({
  id: 'P-4.9',
  what: 'heat that 350 lb of ice takes up in melting, BTU',
  source: 'US baking trade press: 700 lb of water at 32 °F, half as ice, is 4.2 ton-hours of 12 000 BTU',
  status: 'published',
  expected: 50_400,
  got: () =>
    (350 * iceHeatJPerG({ iceTempC: 0, finalTempC: 0, constants: { ...ICE_CONSTANTS, latentHeatJPerG: 144 * 2.326 } })) / 2.326,
  tolerance: { relative: 1e-9 },
  why: 'exact arithmetic; 1 BTU/lb is 2.326 J/g',
})
