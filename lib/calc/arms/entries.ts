import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { balanceArm } from './balance-arm'
import { flatArmLine, flatHold, flatMoves, flatSets } from './flat-arm'
import { replacementMassG } from './replacement-mass'

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
const ARM_FIELDS: Record<string, string> = { flourG: 'control', hold: 'holdDoughMass', heldShare: 'heldPct' }

/** What is left of a held total is binary dust below this share, a thousandth of what the balance is held to. */
const DUST = 1e-12

const dustFree = (value: number | null, scale: number) => (value !== null && Math.abs(value) < DUST * scale ? 0 : value)

const named = <Line extends { lineId: string }>({ lineId, ...line }: Line) => ({ id: lineId, ...line })

export const armsEntries = [
  calcEntry({
    id: 'arms/balance-arm',
    input: z.strictObject({
      control: z.array(
        z.strictObject({
          ...armLine,
          mayMove: z.boolean(),
          setG: optionalNumber,
          minG: optionalNumber,
          maxG: optionalNumber,
        }),
      ),
      added: z.array(z.strictObject(armLine)),
      how: z.enum(['balanced', 'on-top']),
      holdDoughMass: z.boolean(),
      holdFlour: z.boolean(),
      holdWater: z.boolean(),
      holdFat: z.boolean(),
      holdSugars: z.boolean(),
      holdProtein: z.boolean(),
      holdSalt: z.boolean(),
      heldPct: optionalNumber,
    }),
    output: z.strictObject({
      outcome: z.enum(['on-top', 'balanced', 'nothing-to-balance', 'not-balanced']),
      lines: z.array(
        z.strictObject({
          id: z.string(),
          controlG: z.number(),
          armG: z.number(),
          changeG: z.number(),
          weighedG: z.number(),
          belowResolution: z.boolean(),
          atBound: z.nullable(z.enum(['min', 'max'])),
          isSet: z.boolean(),
        }),
      ),
      added: z.array(z.strictObject({ id: z.string(), massG: z.number(), weighedG: z.number() })),
      totals: z.array(
        z.strictObject({
          total,
          isHeld: z.boolean(),
          controlG: z.nullable(z.number()),
          differenceG: z.nullable(z.number()),
          differencePctFlour: z.nullable(z.number()),
          weighedDifferenceG: z.nullable(z.number()),
        }),
      ),
      reasons: z.array(
        z.strictObject({
          code: z.enum([
            'no-movable-line-carries-it',
            'dose-brings-more-than-can-go',
            'totals-conflict',
            'scale-too-coarse',
          ]),
          total,
          broughtG: z.number(),
          removableG: z.number(),
          offG: z.number(),
          offPct: z.nullable(z.number()),
        }),
      ),
      warnings: z.array(
        z.strictObject({ code: z.enum(['line-emptied', 'composition-above-100', 'looks-like-share']), id: z.string() }),
      ),
    }),
    example: {
      control: [
        {
          id: 'flour',
          massG: 1000,
          kind: 'flour',
          waterPct: 14,
          fatPct: 1.5,
          ...stands,
          resolutionG: 1,
          mayMove: false,
        },
        { id: 'water', massG: 560, kind: 'water', waterPct: 100, fatPct: 0, ...stands, resolutionG: 1, mayMove: true },
        {
          id: 'butter',
          massG: 80,
          kind: 'fat',
          waterPct: 16,
          fatPct: 82,
          ...standsForFat,
          resolutionG: 1,
          mayMove: true,
        },
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
    run: ({ control, added, how, heldPct, ...hold }) => {
      const arm = atFlatFields(
        (field) => ARM_FIELDS[field] ?? field,
        () =>
          balanceArm({
            control: control.map(flatArmLine),
            added: added.map(flatArmLine),
            set: flatSets(control),
            hold: flatHold(hold),
            moves: flatMoves(control),
            how,
            ...(heldPct === undefined ? {} : { heldShare: heldPct / 100 }),
          }),
      )
      const doughG = control.reduce((sum, { massG }) => sum + massG, 0)
      return {
        outcome: arm.outcome,
        lines: arm.lines.map(named),
        added: arm.added.map(named),
        totals: arm.totals.map((each) => ({
          ...each,
          differenceG: dustFree(each.differenceG, doughG),
          differencePctFlour: dustFree(each.differencePctFlour, 100),
          weighedDifferenceG: dustFree(each.weighedDifferenceG, doughG),
        })),
        reasons: arm.reasons.map(({ offShare, ...reason }) => ({
          ...reason,
          offPct: offShare === null ? null : 100 * offShare,
        })),
        warnings: arm.warnings.map(named),
      }
    },
  }),
  calcEntry({
    id: 'arms/replacement-mass',
    input: z.strictObject({ removedG: z.number(), ofPct: z.number(), byPct: z.number() }),
    output: z.strictObject({ replacementG: z.number() }),
    example: { removedG: 100, ofPct: 82, byPct: 100 },
    source: 'mass balance',
    run: (q) => ({ replacementG: replacementMassG(q) }),
  }),
] as const
