import { z } from 'zod'
import { calcEntry } from '../entry'
import { minutesAtTemperature } from './minutes-at-temperature'
import { minutesWhileCooling } from './minutes-while-cooling'
import { SPEED_RULE_NAMES } from './speed-rules'
import { TEMP_WARNINGS } from './temp-warnings'
import { yeastForTime } from './yeast-for-time'

const rule = z.enum(SPEED_RULE_NAMES)
const source =
  'Q10 of 2: common practice, no source; 10 % for one °C: US baking trade magazine; Rosso et al. (1993) with cardinal temperatures of Salvado et al. (2011)'

export const timeAndTemperatureEntries = [
  calcEntry({
    id: 'fermentation/yeast-for-time',
    input: z.strictObject({ yeastPctFlour: z.number(), atMin: z.number(), wantedMin: z.number() }),
    output: z.strictObject({ yeastPctFlour: z.number(), warnings: z.array(z.enum(['long-time'])) }),
    example: { yeastPctFlour: 2.5, atMin: 75, wantedMin: 110 },
    source: 'yeast × time: common practice, no source',
    run: yeastForTime,
  }),
  calcEntry({
    id: 'fermentation/minutes-at-temperature',
    input: z.strictObject({ minutes: z.number(), tempC: z.number(), otherTempC: z.number() }),
    output: z.strictObject({
      rules: z.array(z.strictObject({ rule, minutes: z.number(), yeastFactor: z.number() })),
      leastMin: z.number(),
      mostMin: z.number(),
      leastYeastFactor: z.number(),
      mostYeastFactor: z.number(),
      warnings: z.array(z.enum(TEMP_WARNINGS)),
    }),
    example: { minutes: 60, tempC: 27, otherTempC: 23 },
    source,
    run: minutesAtTemperature,
  }),
  calcEntry({
    id: 'fermentation/minutes-while-cooling',
    input: z.strictObject({
      startTempC: z.number(),
      cabinetTempC: z.number(),
      timeConstantMin: z.number(),
      minutes: z.number(),
      referenceTempC: z.number(),
    }),
    output: z.strictObject({
      endTempC: z.number(),
      rules: z.array(z.strictObject({ rule, minutes: z.number() })),
      leastMin: z.number(),
      mostMin: z.number(),
      warnings: z.array(z.enum(TEMP_WARNINGS)),
    }),
    example: { startTempC: 25, cabinetTempC: 5, timeConstantMin: 75, minutes: 840, referenceTempC: 26 },
    source: `Newton’s law of cooling; ${source}`,
    run: minutesWhileCooling,
  }),
] as const
