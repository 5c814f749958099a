import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import type { GoodDirection, MeasureLevel } from '../../db/generated/enums'

type StandardMeasure = {
  code: string
  name: string
  unit: string
  digits: number
  level: MeasureLevel
  direction: GoodDirection
  /** How it is worked out of others; none when it is read. */
  derivation: string | null
  least: number
  most: number
  repeats: number
  method: string
  /** At what age out of the oven it is read, h. The project's own room around what the method says. */
  age?: { leastH: number; mostH: number }
}

/** The method of a volume that is read with a gauge. */
export const seedDisplacement = 'seed displacement'

/**
 * What every bakery reads from the start, in base units (g, mL, s, °C). Plausible ranges are wide: common practice,
 * no source; a value outside asks 'keep or change' and is never refused for it.
 * Loaf volume by seed displacement and its repeats: AACC Approved Method 10-05.01, guideline (named from memory).
 */
export const standardMeasures: readonly StandardMeasure[] = [
  {
    code: 'water-added',
    name: 'Water added',
    unit: 'g',
    digits: 0,
    level: 'batch',
    direction: 'none',
    derivation: null,
    least: 0,
    most: 500_000,
    repeats: 1,
    method: 'weighed',
  },
  {
    code: 'dough-temp',
    name: 'Dough temperature',
    unit: '°C',
    digits: 1,
    level: 'batch',
    direction: 'none',
    derivation: null,
    least: 10,
    most: 40,
    repeats: 1,
    method: 'probe in the middle of the dough, at once after mixing',
  },
  {
    code: 'proof-time',
    name: 'Proof time',
    unit: 's',
    digits: 0,
    level: 'batch',
    direction: 'none',
    derivation: null,
    least: 300,
    most: 86_400,
    repeats: 1,
    method: 'from the last piece moulded to the first piece in the oven',
  },
  {
    code: 'dough-mass',
    name: 'Dough weight',
    unit: 'g',
    digits: 1,
    level: 'piece',
    direction: 'none',
    derivation: null,
    least: 20,
    most: 5_000,
    repeats: 1,
    method: 'piece as scaled',
  },
  {
    code: 'loaf-mass',
    name: 'Loaf weight',
    unit: 'g',
    digits: 1,
    level: 'piece',
    direction: 'none',
    derivation: null,
    least: 20,
    most: 5_000,
    repeats: 1,
    method: 'an hour out of the oven',
    age: { leastH: 1, mostH: 3 },
  },
  {
    code: 'loaf-volume',
    name: 'Loaf volume',
    unit: 'mL',
    digits: 0,
    level: 'piece',
    direction: 'larger',
    derivation: null,
    least: 30,
    most: 20_000,
    repeats: 2,
    method: seedDisplacement,
  },
  {
    code: 'specific-volume',
    name: 'Specific volume',
    unit: 'mL/g',
    digits: 2,
    level: 'piece',
    direction: 'larger',
    derivation: 'loaf-volume / loaf-mass',
    least: 1,
    most: 10,
    repeats: 1,
    method: 'loaf volume over loaf weight',
  },
  {
    code: 'bake-loss',
    name: 'Bake loss',
    unit: '%',
    digits: 1,
    level: 'piece',
    direction: 'smaller',
    derivation: '1 - loaf-mass / dough-mass',
    least: 0,
    most: 40,
    repeats: 1,
    method: 'on dough weight',
  },
  {
    code: 'flour-temp',
    name: 'Flour temperature',
    unit: '°C',
    digits: 1,
    level: 'batch',
    direction: 'none',
    derivation: null,
    least: 5,
    most: 45,
    repeats: 1,
    method: 'probe in the middle of the flour, right before mixing',
  },
  {
    code: 'room-temp',
    name: 'Room temperature',
    unit: '°C',
    digits: 1,
    level: 'batch',
    direction: 'none',
    derivation: null,
    least: 5,
    most: 45,
    repeats: 1,
    method: 'beside the mixer, right before mixing',
  },
  {
    code: 'water-temp',
    name: 'Water temperature',
    unit: '°C',
    digits: 1,
    level: 'batch',
    direction: 'none',
    derivation: null,
    least: 0,
    most: 60,
    repeats: 1,
    method: 'of the water with any ice melted, as it goes in',
  },
]

/** Writes the standard measures of a new bakery. */
export async function createStandardMeasures(tx: Tx, bakeryId: string, now: Date): Promise<void> {
  await tx.measure.createMany({
    data: standardMeasures.map(({ least, most, age, ...measure }, position) => ({
      ...measure,
      bakeryId,
      id: uuid(),
      plausibleLeast: least,
      plausibleMost: most,
      ageLeastH: age?.leastH ?? null,
      ageMostH: age?.mostH ?? null,
      repeatLimit: null,
      position,
      revision: 1,
      createdAt: now,
    })),
  })
}
