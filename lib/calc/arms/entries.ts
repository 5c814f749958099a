import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { balanceArm } from './balance-arm'
import { flatArmLine, flatHold, flatMoves, flatSets } from './flat-arm'

const optionalNumber = z.optional(z.number())
const armLine = {
  id: z.string(),
  massG: z.number(),
  kind: z.enum(['flour', 'water', 'yeast', 'salt', 'fat', 'sugar', 'dairy', 'egg', 'improver', 'other']),
  waterPct: optionalNumber,
  fatPct: optionalNumber,
  sugarsPct: optionalNumber,
  proteinPct: optionalNumber,
  sodiumMgPer100g: optionalNumber,
  waterCounts: z.boolean(),
  standsInForFat: z.boolean(),
  standsInForSugars: z.boolean(),
  standsInForProtein: z.boolean(),
  resolutionG: z.number(),
}
const total = z.enum(['dough-mass', 'flour', 'water', 'fat', 'sugars', 'protein', 'salt'])
const stands = { waterCounts: true, standsInForFat: false, standsInForSugars: false, standsInForProtein: false }
const standsForFat = { ...stands, standsInForFat: true }

/** Where a fault of the whole question shows: no flour in the control, nothing ticked to hold. */
const ARM_FIELDS: Record<string, string> = { flourG: 'control', hold: 'holdDoughMass' }

/** What is left of a held total is binary dust below this share, a thousandth of what the balance is held to. */
const DUST = 1e-12

const dustFree = (value: number | null, scale: number) => (value !== null && Math.abs(value) < DUST * scale ? 0 : value)

export const armsEntries = [
  calcEntry({
    id: 'arms/balance-arm',
    input: z.strictObject({
      control: z.array(z.strictObject({ ...armLine, mayMove: z.boolean(), setG: optionalNumber, minG: optionalNumber, maxG: optionalNumber })),
      added: z.array(z.strictObject(armLine)),
      how: z.enum(['balanced', 'on-top']),
      holdDoughMass: z.boolean(),
      holdFlour: z.boolean(),
      holdWater: z.boolean(),
      holdFat: z.boolean(),
      holdSugars: z.boolean(),
      holdProtein: z.boolean(),
      holdSalt: z.boolean(),
    }),
    output: z.strictObject({
      outcome: z.enum(['on-top', 'balanced', 'nothing-to-balance', 'not-balanced']),
      lines: z.array(
        z.strictObject({
          id: z.string(),
          controlG: z.number(),
          armG: z.number(),
          changeG: z.number(),
          belowResolution: z.boolean(),
          atBound: z.nullable(z.enum(['min', 'max'])),
          isSet: z.boolean(),
        }),
      ),
      totals: z.array(
        z.strictObject({
          total,
          isHeld: z.boolean(),
          controlG: z.nullable(z.number()),
          differenceG: z.nullable(z.number()),
          differencePctFlour: z.nullable(z.number()),
        }),
      ),
      reasons: z.array(
        z.strictObject({
          code: z.enum(['no-movable-line-carries-it', 'dose-brings-more-than-can-go', 'totals-conflict']),
          total,
          broughtG: z.number(),
          removableG: z.number(),
        }),
      ),
    }),
    example: {
      control: [
        { id: 'flour', massG: 1000, kind: 'flour', waterPct: 14, fatPct: 1.5, ...stands, resolutionG: 1, mayMove: false },
        { id: 'water', massG: 560, kind: 'water', waterPct: 100, fatPct: 0, ...stands, resolutionG: 1, mayMove: true },
        { id: 'butter', massG: 80, kind: 'fat', waterPct: 16, fatPct: 82, ...standsForFat, resolutionG: 1, mayMove: true },
      ],
      added: [{ id: 'cream', massG: 60, kind: 'dairy', waterPct: 58, fatPct: 36, ...standsForFat, resolutionG: 1 }],
      how: 'balanced',
      holdDoughMass: false,
      holdFlour: false,
      holdWater: true,
      holdFat: true,
      holdSugars: false,
      holdProtein: false,
      holdSalt: false,
    },
    source: 'mass balance; bounded least squares, Stark and Parker, Computational Statistics 10, 1995',
    run: ({ control, added, how, ...hold }) => {
      const arm = atFlatFields((field) => ARM_FIELDS[field] ?? field, () =>
        balanceArm({ control: control.map(flatArmLine), added: added.map(flatArmLine), set: flatSets(control), hold: flatHold(hold), moves: flatMoves(control), how }),
      )
      const doughG = control.reduce((sum, { massG }) => sum + massG, 0)
      return {
        outcome: arm.outcome,
        lines: arm.lines.map(({ lineId, ...line }) => ({ id: lineId, ...line })),
        totals: arm.totals.map((each) => ({
          ...each,
          differenceG: dustFree(each.differenceG, doughG),
          differencePctFlour: dustFree(each.differencePctFlour, 100),
        })),
        reasons: arm.reasons,
      }
    },
  }),
] as const
