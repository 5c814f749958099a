import { CalcError } from '../../calc/error'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from '../../calc/temperature/constants'
import { frictionOfBatch } from '../../calc/temperature/friction-of-batch'
import { requiredWaterTemp } from '../../calc/temperature/required-water-temp'
import { waterAdvice } from '../../calc/temperature/water-advice'

/**
 * How much heat a kg of a dough takes up for each °C: its mixing water, what has the flour's temperature, and what has the
 * room's. No mass of anything is told by it.
 */
export type DoughHeat = { waterJPerK: number; flourJPerK: number; restJPerK: number }

/** What mixing brings to a kg of a dough, and where that is from: doughs of its mixer, what the bakery wrote down, or what is usual. */
export type WaterFriction = {
  jPerKg: number
  by: 'learned' | 'mixer' | 'usual'
  /** How many doughs it was learned from. */
  doughs: number
  /** Nothing was written down, or the doughs that it was learned from were few, smaller, larger or mixed for less time. */
  isGuess: boolean
}

/** What the water of a trial's doughs is told by, the same for every dough of it. */
export type WaterFacts =
  /** `waters-differ`: what goes in differs so much that each kind of dough needs water of its own. */
  | { outcome: 'no-plain-water' | 'waters-differ' | 'friction-too-high' }
  | {
      outcome: 'known'
      targetC: number
      tapTempC: number | null
      mixMin: number
      heat: DoughHeat
      /** What goes in has no composition, so its heat is a guess. */
      isGuess: boolean
      /** Doughs of one mixer learn from each other, and of a trial that names none those of the trial. */
      mixer: { key: string; name: string | null }
      friction: WaterFriction
      /** The day's first dough on this mixer, as the book knows it. */
      first: FirstDough | null
    }
export type KnownWater = Extract<WaterFacts, { outcome: 'known' }>

/** What was read on a dough, °C; null for what nobody has read. */
export type DoughTemps = { flourC: number | null; roomC: number | null; waterC: number | null; doughC: number | null }

/** A dough of the day, when it was begun, and what its mixing brought to a kg in a minute. */
export type FirstDough = { id: string; code: string; begunAtMs: number; jPerKgMin: number }

/** More than this no mixing warms a dough, °C, and less than none. Common practice, no source. */
export const usualRiseC = { least: 0, most: 20 } as const

export type ToldWater =
  | { outcome: 'missing'; missing: ('flour' | 'room')[] }
  /** Temperatures that no flour and no room has. */
  | { outcome: 'not-worked-out' }
  | {
      outcome: 'told'
      waterTempC: number
      /** Whether there is such water: as it is, with ice, or neither. */
      says: 'water' | 'ice' | 'too-cold' | 'too-hot'
      /** How much of the water is to be ice at 0 °C; null where the tap is not known or it cannot be had. */
      icePct: number | null
      /** By how much mixing warms the dough, °C. */
      riseC: number
      isRiseOdd: boolean
      /** The day's first dough, which took the place of what was known before. */
      correctedBy: string | null
    }

/**
 * What mixing brought to a kg of a dough in a minute, from what was read on it; null as long as something is not read, and
 * where no dough can be so.
 */
export function frictionOfDough(
  { heat, mixMin }: Pick<KnownWater, 'heat' | 'mixMin'>,
  { flourC, roomC, waterC, doughC }: DoughTemps,
): number | null {
  if (flourC === null || roomC === null || waterC === null || doughC === null) return null
  return unlessOff(
    () =>
      frictionOfBatch({
        doughTempC: doughC,
        parts: partsOf(heat, flourC, roomC),
        bowl: null,
        waterMassG: waterOf(heat),
        waterTempC: waterC,
        roomHeatJ: 0,
        mixingMinutes: mixMin,
      }).joulePerKgMin,
  )
}

/** Of a day's doughs the one that was begun first, of those on which everything was read. */
export function firstOfDay(doughs: readonly (Omit<FirstDough, 'jPerKgMin'> & { jPerKgMin: number | null })[]) {
  const whole = doughs.flatMap(({ jPerKgMin, ...dough }) => (jPerKgMin === null ? [] : [{ ...dough, jPerKgMin }]))
  return whole.sort((a, b) => a.begunAtMs - b.begunAtMs || (a.id < b.id ? -1 : 1))[0] ?? null
}

/**
 * The water of a dough that is not mixed yet, by the heat balance of its trial's control: from the flour and the room, the
 * dough temperature of the plan, and the friction that is known of the mixer. What the day's first dough came to takes
 * the friction's place for all that follow, by one rule for every kind of dough (`correctFrictionJPerKg` comes to the same).
 */
export function tellWater(
  facts: KnownWater,
  { flourC, roomC }: Pick<DoughTemps, 'flourC' | 'roomC'>,
  first: FirstDough | null,
): ToldWater {
  if (flourC === null || roomC === null)
    return {
      outcome: 'missing',
      missing: [...(flourC === null ? (['flour'] as const) : []), ...(roomC === null ? (['room'] as const) : [])],
    }
  const jPerKg = first ? first.jPerKgMin * facts.mixMin : facts.friction.jPerKg
  const found = unlessOff(() => waterFor(facts, { flourC, roomC, jPerKg }))
  if (!found) return { outcome: 'not-worked-out' }
  const { waterTempC, heatCapacityJPerK } = found
  const { heat, tapTempC } = facts
  const { iceMassG, warnings } = waterAdvice({ waterTempC, waterMassG: waterOf(heat), tapTempC })
  const riseC = jPerKg / heatCapacityJPerK
  const isTooHot = warnings.includes('hotter-than-boiling') || warnings.includes('too-hot-for-yeast')
  const isTooCold = warnings.includes('colder-than-all-ice') || warnings.includes('much-ice')
  return {
    outcome: 'told',
    waterTempC,
    says: isTooHot ? 'too-hot' : isTooCold ? 'too-cold' : warnings.includes('use-ice') ? 'ice' : 'water',
    icePct: isTooHot || isTooCold || iceMassG === null ? null : (100 * iceMassG) / waterOf(heat),
    riseC,
    isRiseOdd: riseC < usualRiseC.least || riseC > usualRiseC.most,
    correctedBy: first?.code ?? null,
  }
}

/**
 * The heat balance of a kg of dough. Friction below zero is the room's doing, which took out more than mixing brought.
 * @throws CalcError as requiredWaterTemp
 */
export function waterFor(
  { heat, targetC }: Pick<KnownWater, 'heat' | 'targetC'>,
  { flourC, roomC, jPerKg }: { flourC: number; roomC: number; jPerKg: number },
) {
  return requiredWaterTemp({
    doughTempC: targetC,
    parts: partsOf(heat, flourC, roomC),
    bowl: null,
    waterMassG: waterOf(heat),
    friction: { by: 'energy', phases: [{ joulePerKgMin: Math.max(0, jPerKg), minutes: 1 }] },
    roomHeatJ: Math.min(0, jPerKg),
  })
}

/** The parts of a kg of a dough with the temperatures that they have, as if all of them took up heat alike. */
export function partsOf(heat: DoughHeat, flourC: number, roomC: number) {
  const { flourJPerK, restJPerK } = heat
  const specificHeatJPerGK = (flourJPerK + restJPerK) / (1000 - waterOf(heat))
  return [
    { massG: flourJPerK / specificHeatJPerGK, specificHeatJPerGK, tempC: flourC },
    { massG: restJPerK / specificHeatJPerGK, specificHeatJPerGK, tempC: roomC },
  ]
}

/** The mixing water in a kg of a dough, g. */
export function waterOf({ waterJPerK }: DoughHeat): number {
  return waterJPerK / WATER_SPECIFIC_HEAT_J_PER_G_K
}

function unlessOff<Value>(work: () => Value): Value | null {
  try {
    return work()
  } catch (error) {
    if (error instanceof CalcError) return null
    throw error
  }
}
