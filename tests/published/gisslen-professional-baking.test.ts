import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { iceMassG } from '@/lib/calc/temperature/ice-mass'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'W. Gisslen, Professional Baking'
const EIGHTY = { ...ICE_CONSTANTS, latentHeatJPerG: 80 * ICE_CONSTANTS.waterSpecificHeatJPerGK }
const ice = (waterMassG: number, tapTempC: number, wantedTempC: number) =>
  iceMassG({ waterMassG, tapTempC, wantedTempC, iceTempC: 0, convention: 'replacing', constants: EIGHTY })

publishedCheck({
  id: 'P-4.7',
  what: 'ice in 7 kg of water from 18 to 14 °C, kg',
  source: `${source}, ice calculation`,
  status: 'from memory',
  expected: 0.2857,
  got: () => ice(7, 18, 14),
  tolerance: { absolute: 5e-5 },
  why: 'half of the fourth decimal',
})
publishedCheck({
  id: 'P-4.7',
  what: 'ice in 16 lb of water from 65 to 58 °F, lb',
  source: `${source}, ice calculation`,
  status: 'from memory',
  expected: 0.6328,
  got: () => ice(16, ((65 - 32) * 5) / 9, ((58 - 32) * 5) / 9),
  tolerance: { absolute: 5e-5 },
  why: 'half of the fourth decimal',
})
