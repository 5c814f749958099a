import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { agreeReadings } from './agree-readings'
import { breadYieldPct } from './bread-yield'
import { calibrateGauge } from './calibrate-gauge'
import { displacedVolumeMl } from './displaced-volume'
import { heightToWidth } from './height-to-width'
import { loafLosses } from './loaf-losses'
import { scanAndCountEntries } from './scan-and-count-entries'
import { seedBulkDensityGPerMl } from './seed-bulk-density'
import { specificVolumeMlPerG } from './specific-volume'
import { summariseReadings } from './summarise-readings'
import { volumeBySeedMassMl } from './volume-by-seed-mass'
import { volumeFromSlicesMl } from './volume-from-slices'

const numbers = z.array(z.number())

export const loafEntries = [
  calcEntry({
    id: 'loaf/specific-volume',
    input: z.strictObject({ volumeMl: z.number(), massG: z.number() }),
    output: z.strictObject({ specificVolumeMlPerG: z.number() }),
    example: { volumeMl: 2650, massG: 640 },
    source: 'definition; AACC 10-05.01',
    run: (q) => ({ specificVolumeMlPerG: specificVolumeMlPerG(q) }),
  }),
  calcEntry({
    id: 'loaf/displaced-volume',
    input: z.strictObject({ withLoafMl: z.number(), withoutLoafMl: z.number(), offsetMl: z.number() }),
    output: z.strictObject({ volumeMl: z.number() }),
    example: { withLoafMl: 3120, withoutLoafMl: 480, offsetMl: 15 },
    source: 'AACC 10-05.01, rapeseed displacement (guideline)',
    run: (q) => ({ volumeMl: displacedVolumeMl(q) }),
  }),
  calcEntry({
    id: 'loaf/volume-by-seed-mass',
    input: z.strictObject({ seedMassFullG: z.number(), seedMassWithLoafG: z.number(), bulkDensityGPerMl: z.number() }),
    output: z.strictObject({ volumeMl: z.number() }),
    example: { seedMassFullG: 3350, seedMassWithLoafG: 1610, bulkDensityGPerMl: 0.67 },
    source: 'AACC 10-05.01, rapeseed displacement (guideline); mass balance',
    run: (q) => ({ volumeMl: volumeBySeedMassMl(q) }),
  }),
  calcEntry({
    id: 'loaf/seed-bulk-density',
    input: z.strictObject({ fillingMassesG: numbers, boxVolumeMl: z.number() }),
    output: z.strictObject({ bulkDensityGPerMl: z.number() }),
    example: { fillingMassesG: [3342, 3355, 3349], boxVolumeMl: 5000 },
    source: 'definition; common practice, no source',
    run: (q) => ({ bulkDensityGPerMl: seedBulkDensityGPerMl(q) }),
  }),
  calcEntry({
    id: 'loaf/volume-from-slices',
    input: z.strictObject({ sliceAreasMm2: numbers, spacingMm: z.number() }),
    output: z.strictObject({ volumeMl: z.number() }),
    example: { sliceAreasMm2: [6100, 9800, 10_400, 10_300, 9600, 5900], spacingMm: 40 },
    source: "Cavalieri's principle; common practice, no source",
    run: (q) => ({ volumeMl: volumeFromSlicesMl(q) }),
  }),
  calcEntry({
    id: 'loaf/calibrate-gauge',
    input: z.strictObject({ readingsMl: numbers, blockVolumeMl: z.number(), blockUncertaintyMl: z.number() }),
    output: z.strictObject({
      offsetMl: z.number(),
      factor: z.number(),
      repeatabilityMl: z.nullable(z.number()),
      offsetUncertaintyMl: z.nullable(z.number()),
    }),
    example: { readingsMl: [2010, 2015, 2005, 2010], blockVolumeMl: 2000, blockUncertaintyMl: 2 },
    source: 'JCGM 100:2008 (GUM), 4.2.3 and 5.1.2; use of a standard block: AACC 10-05.01',
    run: (q) =>
      atFlatFields(
        (field) => field.replace(/^readings(?!Ml)/, 'readingsMl'),
        () => calibrateGauge(q),
      ),
  }),
  calcEntry({
    id: 'loaf/summarise-readings',
    input: z.strictObject({ readings: numbers }),
    output: z.strictObject({
      n: z.number(),
      mean: z.number(),
      sd: z.nullable(z.number()),
      range: z.number(),
      cvPct: z.nullable(z.number()),
    }),
    example: { readings: [2640, 2655, 2645] },
    source: 'definition; B. P. Welford, Technometrics 4, 1962',
    run: ({ readings }) => summariseReadings(readings),
  }),
  calcEntry({
    id: 'loaf/agree-readings',
    input: z.strictObject({ readings: numbers, repeatabilityLimit: z.number() }),
    output: z.strictObject({
      outcome: z.enum(['needs-another', 'mean', 'median']),
      value: z.nullable(z.number()),
      range: z.number(),
      criticalRange: z.number(),
    }),
    example: { readings: [2640, 2695, 2650], repeatabilityLimit: 40 },
    source: 'ISO 5725-6:1994, 5.2.2; from memory',
    run: agreeReadings,
  }),
  calcEntry({
    id: 'loaf/loaf-losses',
    input: z.strictObject({ doughMassG: z.number(), hotMassG: z.number(), cooledMassG: z.number() }),
    output: z.strictObject({
      bakeLossShare: z.number(),
      coolingLossShare: z.number(),
      totalLossShare: z.number(),
      totalOnBreadShare: z.number(),
    }),
    example: { doughMassG: 750, hotMassG: 668, cooledMassG: 655 },
    source: 'definition; the two bases after W. Gisslen, Professional Baking',
    run: loafLosses,
  }),
  calcEntry({
    id: 'loaf/bread-yield',
    input: z.strictObject({ grossDoughYieldPct: z.number(), lossShare: z.number() }),
    output: z.strictObject({ breadYieldPct: z.number() }),
    example: { grossDoughYieldPct: 168, lossShare: 0.14 },
    source: "definition of the German trade; German bakers' vocational school exercise, 2013",
    run: (q) => ({ breadYieldPct: breadYieldPct(q) }),
  }),
  calcEntry({
    id: 'loaf/height-to-width',
    input: z.strictObject({ heightMm: z.number(), widthMm: z.number() }),
    output: z.strictObject({ heightToWidth: z.number() }),
    example: { heightMm: 82, widthMm: 140 },
    source: 'definition; common practice, no source',
    run: (q) => ({ heightToWidth: heightToWidth(q) }),
  }),
  ...scanAndCountEntries,
] as const
