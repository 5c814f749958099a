import { frictionOfBatch } from '@/lib/calc/temperature/friction-of-batch'
import { requiredWaterTemp } from '@/lib/calc/temperature/required-water-temp'
import { publishedCheck } from '@/tests/support/published-check'

const source =
  'S. P. Cauvain and L. S. Young, Technology of Breadmaking, 1998: intensive mixing of 11 Wh/kg (39.6 kJ/kg) warms the dough by 14 to 15 °C'
const status = 'from memory; flour at 1.84 J/(g·K), Geankoplis'
const JOULE_PER_KG = 11 * 3600
const parts = [{ massG: 1000, tempC: 20, specificHeatJPerGK: 1.84 }]
const dough = { parts, bowl: null, waterMassG: 600, roomHeatJ: 0 }

publishedCheck({
  of: ['temperature/required-water-temp'],
  what: 'rise of the dough by that work in three minutes, °C',
  source,
  status,
  expected: 14.5,
  got: () => {
    const phases = [{ joulePerKgMin: JOULE_PER_KG / 3, minutes: 3 }]
    const { frictionJ, heatCapacityJPerK } = requiredWaterTemp({
      ...dough,
      doughTempC: 30,
      friction: { by: 'energy', phases },
    })
    return frictionJ / heatCapacityJPerK
  },
  tolerance: { absolute: 0.5 },
  why: 'printed as a range of one degree',
})
publishedCheck({
  of: ['temperature/friction-of-batch'],
  what: 'work learned from a dough that came out 14.5 °C warmer than its parts, kJ/kg',
  source,
  status,
  expected: 39.6,
  got: () =>
    (3 * frictionOfBatch({ ...dough, doughTempC: 34.5, waterTempC: 20, mixingMinutes: 3 }).joulePerKgMin) / 1000,
  tolerance: { relative: 0.04 },
  why: 'half a degree in fourteen and a half',
})
