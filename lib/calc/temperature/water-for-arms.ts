import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from './constants'
import { heatOfParts } from './heat-of-parts'
import type { IceConstants } from './ice-heat'
import { waterSource } from './water-source'

/** One dough: its mixing water, and all else that goes in, taken together. */
export type ArmHeat = {
  arm: string
  waterMassG: number
  restMassG: number
  restTempC: number
  restSpecificHeatJPerGK: number
}

export type WaterForArms = {
  arms: {
    arm: string
    waterTempC: number
    outcome: 'mix' | 'ice' | 'not-possible'
    coldMassG: number | null
    hotMassG: number | null
    iceMassG: number | null
    /** What this dough can come out at with the coldest and the warmest water there is. */
    coldestDoughTempC: number
    warmestDoughTempC: number
  }[]
  /** Every arm can come out at the temperature that is wanted. */
  canAll: boolean
  /** Nearest temperature at which all can come out alike; null when there is none. Ask again with it. */
  commonDoughTempC: number | null
}

/**
 * Water temperature for each of several doughs so that all come out alike, by heat balance with one friction for all
 * (J per kg), and how to get that water. When an arm cannot reach the temperature wanted, the nearest that all can.
 * @param wantedDoughTempC −5 to 60 °C; frictionJPerKg of dough, may be 0 or less when the room cools
 * @param arms at least one, names differ; waterMassG > 0 with any ice in it; rest: mass > 0, −40 to 100 °C, 0 to 5 J/(g·K)
 * @param coldTempC, hotTempC, mostTempC, iceTempC, mostIceShare, constants as waterSource; ice replaces water
 * @throws CalcError 'empty' | 'duplicate' | 'not-finite' | 'out-of-range'
 * Source: heat balance, as requiredWaterTemp and waterSource.
 */
export function waterForArms(q: {
  wantedDoughTempC: number
  frictionJPerKg: number
  arms: readonly ArmHeat[]
  coldTempC: number
  hotTempC: number
  mostTempC: number
  iceTempC: number
  mostIceShare: number
  constants: IceConstants
}): WaterForArms {
  mustBeWithin('wantedDoughTempC', q.wantedDoughTempC, { min: -5, max: 60 })
  mustBeWithin('frictionJPerKg', q.frictionJPerKg)
  mustBeWithin('iceTempC', q.iceTempC, { min: -40, max: 0 })
  mustHaveAtLeast('arms', q.arms, 1)
  const names = new Set<string>()
  const arms = q.arms.map((one, i): WaterForArms['arms'][number] => {
    if (names.has(one.arm)) throw new CalcError('duplicate', { field: `arms[${i}].arm`, value: one.arm })
    names.add(one.arm)
    mustBeWithin(`arms[${i}].waterMassG`, one.waterMassG, { over: 0 })
    mustBeWithin(`arms[${i}].restMassG`, one.restMassG, { over: 0 })
    mustBeWithin(`arms[${i}].restTempC`, one.restTempC, { min: -40, max: 100 })
    mustBeWithin(`arms[${i}].restSpecificHeatJPerGK`, one.restSpecificHeatJPerGK, { over: 0, max: 5 })
    const waterTempC = waterTempFor(one, q.wantedDoughTempC, q.frictionJPerKg)
    const ask = (wantedTempC: number) =>
      waterSource({ ...q, waterMassG: one.waterMassG, wantedTempC, convention: 'replacing', constants: q.constants })
    const found = ask(waterTempC)
    const isHad = found.outcome !== 'not-possible'
    return {
      arm: one.arm,
      waterTempC,
      outcome: found.outcome,
      coldMassG: isHad ? found.coldMassG : null,
      hotMassG: isHad ? found.hotMassG : null,
      iceMassG: isHad ? found.iceMassG : null,
      coldestDoughTempC: doughTempFor(one, reachable(ask(-1e6)), q.frictionJPerKg),
      warmestDoughTempC: doughTempFor(one, reachable(ask(1e6)), q.frictionJPerKg),
    }
  })
  const lowC = Math.max(...arms.map((one) => one.coldestDoughTempC))
  const highC = Math.min(...arms.map((one) => one.warmestDoughTempC))
  return {
    arms,
    canAll: arms.every(({ outcome }) => outcome !== 'not-possible'),
    commonDoughTempC: lowC > highC ? null : Math.min(highC, Math.max(lowC, q.wantedDoughTempC)),
  }
}

/** Coldest water that ice is reckoned with; below, waterSource does not try. */
const COLDEST_WATER_C = -60

/** The end of what can be had, which asking for more than anybody can give brings out. */
function reachable(found: ReturnType<typeof waterSource>): number {
  if (found.outcome === 'not-possible') return Math.max(COLDEST_WATER_C, found.reachableTempC)
  throw new CalcError('out-of-range', { field: 'mostIceShare', reason: 'no-end' })
}

function waterTempFor(one: ArmHeat, doughTempC: number, frictionJPerKg: number): number {
  const { heatJ, waterJPerK, frictionJ } = heatOf(one, doughTempC, frictionJPerKg)
  return doughTempC + (heatJ - frictionJ) / waterJPerK
}

function doughTempFor(one: ArmHeat, waterTempC: number, frictionJPerKg: number): number {
  const { waterJPerK, restJPerK, frictionJ } = heatOf(one, 0, frictionJPerKg)
  return (waterJPerK * waterTempC + restJPerK * one.restTempC + frictionJ) / (waterJPerK + restJPerK)
}

function heatOf(one: ArmHeat, doughTempC: number, frictionJPerKg: number) {
  const rest = { massG: one.restMassG, tempC: one.restTempC, specificHeatJPerGK: one.restSpecificHeatJPerGK }
  const { heatJ, partsJPerK } = heatOfParts({ doughTempC, parts: [rest], bowl: null })
  const waterJPerK = one.waterMassG * WATER_SPECIFIC_HEAT_J_PER_G_K
  return {
    heatJ,
    restJPerK: partsJPerK,
    waterJPerK,
    frictionJ: (frictionJPerKg * (one.waterMassG + one.restMassG)) / 1000,
  }
}
