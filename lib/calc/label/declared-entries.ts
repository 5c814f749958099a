import { z } from 'zod'
import { calcEntry } from '../entry'
import { declaredTolerance, TOLERANCE_NUTRIENTS } from './declared-tolerance'
import { ingredientQuantity } from './ingredient-quantity'

const CAUTIONS = ['draft-for-competent-person', 'local-rules-decide'] as const
const cautions = z.array(z.enum(CAUTIONS))

/** What a label declares, worked out or held against a measurement. */
export const declaredEntries = [
  calcEntry({
    id: 'label/ingredient-quantity',
    input: z.strictObject({ ingoingMassG: z.number(), finishedMassG: z.number() }),
    output: z.strictObject({ quantityPct: z.number(), sayAs: z.enum(['percent', 'g-per-100-g']), cautions }),
    example: { ingoingMassG: 240, finishedMassG: 1480 },
    source: 'Regulation (EU) No 1169/2011, Article 22 and Annex VIII; Commission Notice 2017/C 393/05',
    run: (q) => ({ ...ingredientQuantity(q), cautions: [...CAUTIONS] }),
  }),
  calcEntry({
    id: 'label/declared-tolerance',
    input: z.strictObject({ nutrient: z.enum(TOLERANCE_NUTRIENTS), declaredG: z.number(), measuredG: z.number() }),
    output: z.strictObject({ leastG: z.number(), mostG: z.number(), isWithin: z.boolean(), cautions }),
    example: { nutrient: 'protein', declaredG: 9.2, measuredG: 8.1 },
    source:
      'European Commission, Guidance on tolerances for nutrient values, December 2012, table 1; partly from memory',
    run: (q) => ({ ...declaredTolerance(q), cautions: [...CAUTIONS] }),
  }),
] as const
