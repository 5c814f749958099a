import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { icedWaterTemp } from '@/lib/calc/temperature/iced-water-temp'
import { waterForArms } from '@/lib/calc/temperature/water-for-arms'
import { answerOf } from '@/tests/support/answer-of'
import { publishedCheck } from '@/tests/support/published-check'

const source =
  'Article by a milling technologist, web: 40 kg of water, tap 20 °C, wanted 10 °C, 334.6 J/g, 4.186 J/(g·K)'
const constants = { ...ICE_CONSTANTS, latentHeatJPerG: 334.6, waterSpecificHeatJPerGK: 4.186 }
const q = {
  waterMassG: 40,
  tapTempC: 20,
  wantedTempC: 10,
  iceTempC: 0,
  latentHeatJPerG: 334.6,
  waterSpecificHeatJPerGK: 4.186,
}

publishedCheck({
  id: 'P-4.8',
  of: ['temperature/ice-mass'],
  what: 'ice replacing part of the water, kg',
  source,
  status: 'published inputs',
  expected: 4.0027,
  got: () => Number(answerOf('temperature/ice-mass', { ...q, convention: 'replacing' }).iceMassG),
  tolerance: { absolute: 5e-5 },
  why: 'half of the fourth decimal',
})
publishedCheck({
  id: 'P-4.8',
  of: ['temperature/ice-mass'],
  what: 'ice added to the water, kg (the article prints 4.4)',
  source,
  status: 'published inputs',
  expected: 4.4477,
  got: () => Number(answerOf('temperature/ice-mass', { ...q, convention: 'adding' }).iceMassG),
  tolerance: { absolute: 1e-4 },
  why: 'the worked figure, 4.44775, is cut off after the fourth decimal',
})
publishedCheck({
  id: 'P-4.8',
  of: ['temperature/ice-mass', 'temperature/iced-water-temp'],
  what: 'the article replaces by the figure for adding: 4.4 kg then give 9.007 °C and not 10',
  source,
  status: 'published inputs',
  expected: 9.007,
  got: () => icedWaterTemp({ waterMassG: 35.6, tapTempC: 20, iceMassG: 4.4, iceTempC: 0, constants }).tempC,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
publishedCheck({
  id: 'P-4.8',
  of: ['temperature/water-for-arms'],
  what: 'ice for two doughs whose mixing water must be at 10 °C, as a share of the water; the article’s 40 kg take 4.0027 kg',
  source,
  status: 'published inputs',
  expected: 4.0027 / 40,
  got: () => {
    // Everything else is at 10 °C already, so the water must be too.
    const rest = { restTempC: 10, restSpecificHeatJPerGK: 1.9 }
    const { arms } = waterForArms({
      wantedDoughTempC: 10,
      frictionJPerKg: 0,
      arms: [
        { arm: 'A', waterMassG: 40_000, restMassG: 60_000, ...rest },
        { arm: 'B', waterMassG: 20_000, restMassG: 60_000, ...rest },
      ],
      coldTempC: 20,
      hotTempC: 50,
      mostTempC: 40,
      iceTempC: 0,
      mostIceShare: 0.5,
      constants,
    })
    return arms.reduce((sum, one) => sum + (one.iceMassG ?? Number.NaN), 0) / 60_000
  },
  tolerance: { absolute: 0.00005 / 40 },
  why: 'half of the fourth decimal of the 4.0027 kg',
})
