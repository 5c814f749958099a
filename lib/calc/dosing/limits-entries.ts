import { z } from 'zod'
import { calcEntry } from '../entry'
import { LIMIT_FORMS, LIMIT_NOTES, LIMIT_REGIONS, LIMITED_FOODS, LIMITED_SUBSTANCES } from './limit-rows'
import { LIMIT_CAUTIONS, limitsOf } from './limits'

export const limitsEntries = [
  calcEntry({
    id: 'dosing/limits',
    input: z.strictObject({ substance: z.enum(LIMITED_SUBSTANCES), region: z.optional(z.enum(LIMIT_REGIONS)) }),
    output: z.strictObject({
      rows: z.array(
        z.strictObject({
          region: z.enum(LIMIT_REGIONS),
          food: z.enum(LIMITED_FOODS),
          rule: z.enum(['at-most', 'quantum-satis', 'forbidden']),
          limitMgPerKg: z.nullable(z.number()),
          basis: z.enum(['flour', 'finished-food']),
          notes: z.array(z.enum(LIMIT_NOTES)),
          substances: z.array(z.enum(LIMITED_SUBSTANCES)),
          form: z.enum(LIMIT_FORMS),
          countsFlourContent: z.boolean(),
          source: z.string(),
          origin: z.enum(['read', 'from-memory']),
          checkedOn: z.nullable(z.string()),
        }),
      ),
      cautions: z.array(z.enum(LIMIT_CAUTIONS)),
    }),
    example: { substance: 'ascorbic-acid' },
    source:
      'each limit has its own: 21 CFR; Regulation (EC) 1333/2008, Annex II; Health Canada, list 2; others named with them',
    run: ({ substance, region = null }) => {
      const { rows, cautions } = limitsOf({ substance, region })
      return {
        rows: rows.map(({ substances, notes, maxMgPerKg, ...row }) => ({
          ...row,
          substances: [...substances],
          notes: [...notes],
          limitMgPerKg: maxMgPerKg,
        })),
        cautions,
      }
    },
  }),
] as const
