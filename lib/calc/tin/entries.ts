import { z } from 'zod'
import { calcEntry } from '../entry'
import { doughForTin } from './dough-for-tin'
import { fromTinThatWorks } from './from-tin-that-works'
import { taperedVolume } from './tapered-volume'

export const tinEntries = [
  calcEntry({
    id: 'tin/dough-for-tin',
    input: z.strictObject({ tinVolumeMl: z.number(), tinMlPerG: z.number() }),
    output: z.strictObject({ doughMassG: z.number(), warnings: z.array(z.enum(['unusual-ratio'])) }),
    example: { tinVolumeMl: 1620, tinMlPerG: 1.9 },
    source: 'Australian bread-baking page, 2024; the ratios are common practice',
    run: doughForTin,
  }),
  calcEntry({
    id: 'tin/from-tin-that-works',
    input: z.strictObject({ tinVolumeMl: z.number(), doughMassG: z.number(), newTinVolumeMl: z.number() }),
    output: z.strictObject({ tinMlPerG: z.number(), factor: z.number(), newDoughMassG: z.number() }),
    example: { tinVolumeMl: 1620, doughMassG: 840, newTinVolumeMl: 2250 },
    source: 'Wholegrain teaching page, 2015',
    run: fromTinThatWorks,
  }),
  calcEntry({
    id: 'tin/tapered-volume',
    input: z.strictObject({
      topLengthMm: z.number(),
      topWidthMm: z.number(),
      baseLengthMm: z.number(),
      baseWidthMm: z.number(),
      depthMm: z.number(),
    }),
    output: z.strictObject({ tinVolumeMl: z.number(), topTimesDepthMl: z.number() }),
    example: { topLengthMm: 240, topWidthMm: 120, baseLengthMm: 220, baseWidthMm: 100, depthMm: 75 },
    source: 'prismoidal formula; any text on mensuration',
    run: taperedVolume,
  }),
] as const
