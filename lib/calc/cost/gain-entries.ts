import { z } from 'zod'
import { calcEntry } from '../entry'
import { Decimal } from './decimal'
import { decimalText } from './decimal-text'
import { leastOrder } from './least-order'
import { madeBatchCost } from './made-batch-cost'
import { mustBeDecimal } from './must-be-decimal'
import { payBack } from './pay-back'
import { sameVolumePrice } from './same-volume-price'
import { sameVolumeRoute } from './same-volume-route'

/** Money as in entries.ts: a decimal in text, in minor units. */
const minor = z.string()

/** Below any amount that can be written: a gain may be a loss. */
const ANY = -1e15

export const gainEntries = [
  calcEntry({
    id: 'cost/made-batch-cost',
    input: z.strictObject({
      ingredientsMinor: minor,
      workMin: z.number(),
      wagePerHourMinor: minor,
      energyKwh: z.number(),
      pricePerKwhMinor: minor,
    }),
    output: z.strictObject({ totalMinor: minor, labourMinor: minor, energyMinor: minor }),
    example: { ingredientsMinor: '3120', workMin: 40, wagePerHourMinor: '2100', energyKwh: 9, pricePerKwhMinor: '32' },
    source: 'definition of direct cost; common practice, no source',
    run: (q) => {
      const cost = madeBatchCost({
        ...q,
        ingredientsMinor: mustBeDecimal('ingredientsMinor', q.ingredientsMinor),
        wagePerHourMinor: mustBeDecimal('wagePerHourMinor', q.wagePerHourMinor),
        pricePerKwhMinor: mustBeDecimal('pricePerKwhMinor', q.pricePerKwhMinor),
      })
      return {
        totalMinor: decimalText(cost.totalMinor),
        labourMinor: decimalText(cost.labourMinor),
        energyMinor: decimalText(cost.energyMinor),
      }
    },
  }),
  calcEntry({
    id: 'cost/same-volume-route',
    input: z.strictObject({
      scalingMassG: z.number(),
      volumeRatio: z.number(),
      lowerVolumeRatio: z.number(),
      upperVolumeRatio: z.number(),
      controlPerKgMinor: minor,
      armPerKgMinor: minor,
      hasDeclaredWeight: z.boolean(),
    }),
    output: z.strictObject({
      scalingMassG: z.number(),
      lowerScalingMassG: z.number(),
      upperScalingMassG: z.number(),
      lessDoughG: z.number(),
      controlPieceMinor: minor,
      armPieceMinor: minor,
      savedPerPieceMinor: minor,
      lowerSavedPerPieceMinor: minor,
      upperSavedPerPieceMinor: minor,
      cautions: z.array(z.enum(['proposal-to-bake', 'declared-weight', 'ratio-below-one'])),
    }),
    example: {
      scalingMassG: 580,
      volumeRatio: 1.07,
      lowerVolumeRatio: 1.03,
      upperVolumeRatio: 1.11,
      controlPerKgMinor: '92',
      armPerKgMinor: '95.4',
      hasDeclaredWeight: false,
    },
    source: 'definition; common practice, no source',
    run: (q) => {
      const route = sameVolumeRoute({
        ...q,
        controlPerKgMinor: mustBeDecimal('controlPerKgMinor', q.controlPerKgMinor),
        armPerKgMinor: mustBeDecimal('armPerKgMinor', q.armPerKgMinor),
      })
      return {
        ...route,
        controlPieceMinor: decimalText(route.controlPieceMinor),
        armPieceMinor: decimalText(route.armPieceMinor),
        savedPerPieceMinor: decimalText(route.savedPerPieceMinor),
        lowerSavedPerPieceMinor: decimalText(route.lowerSavedPerPieceMinor),
        upperSavedPerPieceMinor: decimalText(route.upperSavedPerPieceMinor),
      }
    },
  }),
  calcEntry({
    id: 'cost/same-volume-price',
    input: z.strictObject({
      volumeRatio: z.number(),
      controlRestMinor: minor,
      armRestMinor: minor,
      controlMassG: z.number(),
      armMassG: z.number(),
    }),
    output: z.strictObject({
      outcome: z.enum(['up-to', 'from', 'never', 'always', 'no-bearing']),
      perKgMinor: z.nullable(minor),
    }),
    example: {
      volumeRatio: 1.04,
      controlRestMinor: '46.8',
      armRestMinor: '46.6',
      controlMassG: 0,
      armMassG: 3.1,
    },
    source: 'definition; common practice, no source',
    run: (q) => {
      const found = sameVolumePrice({
        volumeRatio: q.volumeRatio,
        controlRestMinor: mustBeDecimal('controlRestMinor', q.controlRestMinor),
        armRestMinor: mustBeDecimal('armRestMinor', q.armRestMinor),
        controlMassG: new Decimal(q.controlMassG),
        armMassG: new Decimal(q.armMassG),
      })
      return {
        outcome: found.outcome,
        perKgMinor: 'perKgMinor' in found ? decimalText(found.perKgMinor) : null,
      }
    },
  }),
  calcEntry({
    id: 'cost/pay-back',
    input: z.strictObject({
      onceMinor: minor,
      gainPerPieceMinor: minor,
      lowerGainPerPieceMinor: minor,
      upperGainPerPieceMinor: minor,
      piecesPerWeek: z.number(),
      workMinPerWeek: z.number(),
      wagePerHourMinor: minor,
      otherPerWeekMinor: minor,
    }),
    output: z.strictObject({
      outcome: z.enum(['weeks', 'at-once', 'no-pay-back']),
      weeks: z.nullable(z.number()),
      leastWeeks: z.nullable(z.number()),
      mostWeeks: z.nullable(z.number()),
      netPerWeekMinor: minor,
    }),
    example: {
      onceMinor: '42000',
      gainPerPieceMinor: '3.2',
      lowerGainPerPieceMinor: '0.4',
      upperGainPerPieceMinor: '6.1',
      piecesPerWeek: 900,
      workMinPerWeek: 25,
      wagePerHourMinor: '1800',
      otherPerWeekMinor: '0',
    },
    source: 'definition of the pay-back time; common practice, no source',
    run: (q) => {
      const found = payBack({
        piecesPerWeek: q.piecesPerWeek,
        workMinPerWeek: q.workMinPerWeek,
        onceMinor: mustBeDecimal('onceMinor', q.onceMinor),
        gainPerPieceMinor: mustBeDecimal('gainPerPieceMinor', q.gainPerPieceMinor, ANY),
        lowerGainPerPieceMinor: mustBeDecimal('lowerGainPerPieceMinor', q.lowerGainPerPieceMinor, ANY),
        upperGainPerPieceMinor: mustBeDecimal('upperGainPerPieceMinor', q.upperGainPerPieceMinor, ANY),
        wagePerHourMinor: mustBeDecimal('wagePerHourMinor', q.wagePerHourMinor),
        otherPerWeekMinor: mustBeDecimal('otherPerWeekMinor', q.otherPerWeekMinor),
      })
      return { ...found, netPerWeekMinor: decimalText(found.netPerWeekMinor) }
    },
  }),
  calcEntry({
    id: 'cost/least-order',
    input: z.strictObject({
      leastOrderG: z.number(),
      useGPerWeek: z.number(),
      bestBeforeWeeks: z.number(),
      perKgMinor: minor,
    }),
    output: z.strictObject({
      usedOfOrderG: z.number(),
      thrownAwayOfOrderG: z.number(),
      thrownAwayShare: z.number(),
      weeksOneOrderLasts: z.number(),
      ordersPerYear: z.number(),
      thrownAwayPerYearMinor: minor,
      perUsedKgMinor: minor,
    }),
    example: { leastOrderG: 20_000, useGPerWeek: 350, bestBeforeWeeks: 40, perKgMinor: '740' },
    source: 'mass balance; common practice, no source',
    run: (q) => {
      const order = leastOrder({ ...q, perKgMinor: mustBeDecimal('perKgMinor', q.perKgMinor) })
      return {
        ...order,
        thrownAwayPerYearMinor: decimalText(order.thrownAwayPerYearMinor),
        perUsedKgMinor: decimalText(order.perUsedKgMinor),
      }
    },
  }),
] as const
