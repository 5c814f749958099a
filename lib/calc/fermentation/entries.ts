import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { YEAST_MAXIMUM_TEMP_C, YEAST_MINIMUM_TEMP_C, YEAST_OPTIMUM_TEMP_C } from './constants'
import { equivalentMinutes } from './equivalent-minutes'
import { fitRise } from './fit-rise'
import { q10 } from './q10'
import { relativeRateShare } from './relative-rate'
import { risePct } from './rise-pct'
import { SPEED_RULE_NAMES } from './speed-rules'
import { TEMP_WARNINGS } from './temp-warnings'
import { timeAndTemperatureEntries } from './time-and-temperature-entries'
import { timeToRise } from './time-to-rise'

const riseReadings = z.array(z.strictObject({ atMin: z.number(), risePct: z.number() }))
const kind = z.enum(['gompertz', 'logistic'])
const rise = [
  { atMin: 0, risePct: 0 },
  { atMin: 20, risePct: 8 },
  { atMin: 40, risePct: 27 },
  { atMin: 60, risePct: 55 },
  { atMin: 80, risePct: 84 },
  { atMin: 100, risePct: 103 },
  { atMin: 120, risePct: 118 },
  { atMin: 150, risePct: 127 },
]

/** What the fit refuses lies in the readings. */
const ofReadings = { start: 'readings', x: 'readings', y: 'readings' }

export const fermentationEntries = [
  calcEntry({
    id: 'fermentation/relative-rate',
    input: z.strictObject({
      tempC: z.number(),
      minimumTempC: z.number(),
      optimumTempC: z.number(),
      maximumTempC: z.number(),
    }),
    output: z.strictObject({ rateShare: z.number() }),
    example: {
      tempC: 26,
      minimumTempC: YEAST_MINIMUM_TEMP_C,
      optimumTempC: YEAST_OPTIMUM_TEMP_C,
      maximumTempC: YEAST_MAXIMUM_TEMP_C,
    },
    source:
      'L. Rosso, J. R. Lobry, J. P. Flandrois (1993), Journal of Theoretical Biology 162: 447–463; temperatures of Z. Salvado et al. (2011), doi 10.1128/AEM.01861-10',
    run: (q) => ({ rateShare: relativeRateShare(q) }),
  }),
  calcEntry({
    id: 'fermentation/q10',
    input: z.strictObject({
      firstRate: z.number(),
      firstTempC: z.number(),
      secondRate: z.number(),
      secondTempC: z.number(),
    }),
    output: z.strictObject({ q10: z.number() }),
    example: { firstRate: 1, firstTempC: 24, secondRate: 1.35, secondTempC: 28 },
    source: 'definition of Q10; common practice, no source',
    run: (q) => ({ q10: q10(q) }),
  }),
  calcEntry({
    id: 'fermentation/equivalent-minutes',
    input: z.strictObject({
      readings: z.array(z.strictObject({ atMin: z.number(), doughTempC: z.number() })),
      referenceTempC: z.number(),
    }),
    output: z.strictObject({
      rules: z.array(z.strictObject({ rule: z.enum(SPEED_RULE_NAMES), minutes: z.number() })),
      leastMin: z.number(),
      mostMin: z.number(),
      warnings: z.array(z.enum(TEMP_WARNINGS)),
    }),
    example: {
      readings: [
        { atMin: 0, doughTempC: 25 },
        { atMin: 45, doughTempC: 26.5 },
        { atMin: 90, doughTempC: 29 },
      ],
      referenceTempC: 27,
    },
    source:
      'Rosso et al. (1993) with cardinal temperatures of Salvado et al. (2011); 10 % for one °C: rule of thumb, US baking trade magazine',
    run: equivalentMinutes,
  }),
  calcEntry({
    id: 'fermentation/rise-pct',
    input: z.strictObject({ startHeightMm: z.number(), heightMm: z.number() }),
    output: z.strictObject({ risePct: z.number() }),
    example: { startHeightMm: 62, heightMm: 108.5 },
    source: 'home sourdough teaching; common practice, no source',
    run: (q) => ({ risePct: risePct(q) }),
  }),
  calcEntry({
    id: 'fermentation/fit-rise',
    input: z.strictObject({ readings: riseReadings, kind }),
    output: z.strictObject({
      mostRisePct: z.number(),
      mostRiseStandardErrorPct: z.number(),
      steepestPctPerMin: z.number(),
      steepestStandardErrorPctPerMin: z.number(),
      lagMin: z.number(),
      lagStandardErrorMin: z.number(),
      residualSumSquares: z.number(),
      residualSdPct: z.number(),
      residualDf: z.number(),
      warnings: z.array(z.enum(['end-not-seen'])),
    }),
    example: { readings: rise, kind: 'gompertz' },
    source:
      'M. H. Zwietering et al. (1990), Applied and Environmental Microbiology 56: 1875–1881; for dough A. Romano et al. (2007), Journal of Food Engineering 83: 142–148',
    run: (q) => {
      const { covariance: _covariance, ...fit } = atFlatFields(ofReadings, () => fitRise(q))
      return fit
    },
  }),
  calcEntry({
    id: 'fermentation/time-to-rise',
    input: z.strictObject({ readings: riseReadings, kind, targetRisePct: z.number(), confidenceShare: z.number() }),
    output: z.strictObject({
      atMin: z.number(),
      standardErrorMin: z.number(),
      lowerMin: z.number(),
      upperMin: z.number(),
      residualDf: z.number(),
      warnings: z.array(z.enum(['end-not-seen', 'beyond-readings'])),
    }),
    example: { readings: rise, kind: 'gompertz', targetRisePct: 75, confidenceShare: 0.95 },
    source:
      'M. H. Zwietering et al. (1990), Applied and Environmental Microbiology 56: 1875–1881; delta method, G. W. Oehlert (1992), The American Statistician 46: 27–29',
    run: (q) => atFlatFields(ofReadings, () => timeToRise(q)),
  }),
  ...timeAndTemperatureEntries,
] as const
