import { ICE_CONSTANTS, iceHeatJPerG } from '@/lib/calc/temperature/ice-heat'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-4.9',
  of: ['temperature/ice-mass'],
  what: 'heat that 350 lb of ice takes up in melting, BTU',
  source: 'US baking trade press: 700 lb of water at 32 °F, half as ice, is 4.2 ton-hours of 12 000 BTU',
  status: 'published',
  expected: 50_400,
  got: () =>
    (350 *
      iceHeatJPerG({ iceTempC: 0, finalTempC: 0, constants: { ...ICE_CONSTANTS, latentHeatJPerG: 144 * 2.326 } })) /
    2.326,
  tolerance: { relative: 1e-9 },
  why: 'exact arithmetic; 1 BTU/lb is 2.326 J/g',
})
