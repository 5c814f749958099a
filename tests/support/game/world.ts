import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom, type Random } from '@/lib/calc/random/seeded-random'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'
import type { FloorSetup } from './floor'

/**
 * How invented breads spread, as shares of their volume: doughs and days as a small bakery may find them, common
 * practice, no source. No arm has an effect over all mornings that there might be.
 */
const spread = { morning: 0.02, armOfMorning: 0.008, dough: 0.03, loaf: 0.015 } as const
export const usualMl = 2000
export const usualG = 420
const readSdMl = 8

export type TrueDough = {
  tempC: number
  proofS: number
  waterG: number
  loaves: { massG: number /** As often as somebody reads it. */; readMl: () => number }[]
}

export type World = {
  /** How good a morning is for bread, as a share: whoever bakes every day knows. */
  morning: (date: number) => number
  /** What comes out of a dough that is begun on a morning. */
  bake: (dough: { code: string; arm: number }, date: number) => TrueDough
}

/** Breads from the seed alone: equal ones, unless a test dough adds a share. */
export function breadsOf(seed: string, loaves: number, gain = 0): World {
  const known = new Map<number, number>()
  const morning = (date: number) => {
    const found = known.get(date) ?? spread.morning * deviate(`${seed} morning ${date}`)
    known.set(date, found)
    return found
  }
  return {
    morning,
    bake({ code, arm }, date) {
      const share =
        1 +
        (arm === 0 ? 0 : gain) +
        morning(date) +
        spread.armOfMorning * deviate(`${seed} arm ${arm} morning ${date}`) +
        spread.dough * deviate(`${seed} dough ${code}`)
      const random = seededRandom(`${seed} loaves ${code}`)
      const next = () => normalDeviate(random)
      return {
        tempC: 26 + 0.2 * next(),
        proofS: 3300 + 60 * next(),
        waterG: 600 + next(),
        loaves: Array.from({ length: loaves }, () => {
          const loafG = usualG + 3 * next()
          const trueMl = usualMl * (share + spread.loaf * next()) * (loafG / usualG)
          return { massG: loafG, readMl: () => trueMl + readSdMl * next() }
        }),
      }
    },
  }
}

function deviate(name: string): number {
  return normalDeviate(seededRandom(name))
}

/** What somebody chooses before anything is baked. */
export type Draft = { days: number; arms: number; doughs: number; loaves: number; measure: string }

/** One after the other. That of two test doughs comes seldom: their joint limits take most of the time. */
const drafts: readonly Draft[] = [
  { days: 3, arms: 2, doughs: 1, loaves: 1, measure: 'loaf-volume' },
  { days: 3, arms: 1, doughs: 1, loaves: 2, measure: 'loaf-volume' },
  { days: 2, arms: 1, doughs: 2, loaves: 2, measure: 'loaf-volume' },
  { days: 4, arms: 1, doughs: 1, loaves: 2, measure: 'specific-volume' },
  { days: 5, arms: 1, doughs: 1, loaves: 1, measure: 'loaf-volume' },
  { days: 3, arms: 1, doughs: 2, loaves: 1, measure: 'specific-volume' },
  { days: 4, arms: 1, doughs: 1, loaves: 2, measure: 'loaf-volume' },
  { days: 6, arms: 1, doughs: 1, loaves: 1, measure: 'loaf-volume' },
]

export function draftOf(seed: number): Draft {
  return drafts[seed % drafts.length]!
}

const measures: FloorSetup['measures'] = standardMeasures.map(
  ({ least, most, method: _, direction: __, ...measure }) => ({
    ...measure,
    id: measure.code,
    repeatLimit: null,
    plausibleLeast: least,
    plausibleMost: most,
    isEnded: false,
  }),
)

/** A floor for a draft, its doughs in an order drawn by the seed. */
export function setupOf(seed: string, draft: Draft): FloorSetup {
  const random = seededRandom(`${seed} order`)
  const found = standardMeasures.find(({ code }) => code === draft.measure)!
  const days = Array.from({ length: draft.days }, (_, i) => i + 1)
  return {
    trialId: '01900000-0000-7000-9000-000000000000',
    declared: {
      kind: 'gain',
      measure: { name: found.name, unit: found.unit, digits: found.digits, direction: found.direction },
      margin: 1,
      marginUnit: 'pct',
      confidencePct: 95,
      holdsFor: 'any_day',
      arms: Array.from({ length: draft.arms + 1 }, (_, position) => ({
        position,
        name: String(position),
        plannedWaterG: 600,
      })),
      mixingDays: draft.days,
      batchesPerArm: draft.doughs,
      factor: null,
    },
    primary: { id: found.code, code: found.code, level: found.level },
    piecesPerBatch: draft.loaves,
    measures,
    ranges: { scalingMassG: null, plannedWaterG: new Map(), usualMlPerG: new Map() },
    doughs: days.flatMap((day) =>
      shuffled(
        Array.from({ length: (draft.arms + 1) * draft.doughs }, (_, i) => i % (draft.arms + 1)),
        random,
      ).map((arm, i) => ({
        id: `dough ${day} ${i + 1}`,
        code: `K${day}${i + 1}`,
        arm,
        day,
        plannedOrder: i + 1,
      })),
    ),
    player: { bakeryId: 'bakery', id: 'player', name: 'Pip' },
    begin: new Date('2026-03-02T04:00:00.000Z'),
  }
}

function shuffled<Item>(items: readonly Item[], random: Random): Item[] {
  const left = [...items]
  return items.map(() => left.splice(Math.floor(random() * left.length), 1)[0]!)
}
