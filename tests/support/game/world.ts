import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import type { PlannedOrder } from '@/lib/kitchen/repairs/order-of-added-day'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { orderOfPlan } from '@/lib/kitchen/trials/order-of-plan'
import type { Plan } from '@/lib/kitchen/trials/plan-types'
import { linesOfPlan, type TrialLine } from '@/lib/kitchen/weighings/lines-of-plan'
import { doseOf, plannedFacts } from '../plan-facts'
import type { FloorSetup } from './floor'

/**
 * How invented breads spread, as shares of their volume: doughs and days as a small bakery may find them, common
 * practice, no source. No arm has an effect over all mornings that there might be.
 */
const spread = { morning: 0.02, armOfMorning: 0.008, dough: 0.03, loaf: 0.015 } as const
export const usualMl = 2000
export const usualG = 420
const readSdMl = 8
/** Of how many doughs the dose is weighed off, and how much of it goes in then. */
const slips = { share: 0.01, doseShare: 0.8 } as const

export type TrueDough = {
  tempC: number
  proofS: number
  waterG: number
  /** How much of its dose went in, as a share of what was planned. */
  doseShare: number
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
        doseShare: seededRandom(`${seed} slip ${code}`)() < slips.share ? slips.doseShare : 1,
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

/** Of so many test doughs, with more malt each: all of a plan but its order, which is of a seed. */
function planOf(arms: number): { plan: Plan; lines: TrialLine[] } {
  const scale = { id: 'scale', name: 'Scale', resolutionG: 0.1, repeatabilityG: 0, leastG: null, mostG: 6000 }
  const plan = drawUpPlan(
    plannedFacts({
      scale,
      // As few lines as there can be: one that all doughs have the same of, and the dose.
      stages: [
        {
          id: 'dough',
          kind: 'final_dough',
          name: '',
          lines: [{ id: 'flour', ingredientId: 'flour', pctFlour: 100 }],
        },
      ],
      declared: { kind: 'look_only' },
      arms: Array.from({ length: arms }, (_, i) => ({
        name: String(i + 1),
        onTop: false,
        doses: [doseOf('malt', 0.5 * (i + 1))],
      })),
    }),
    null,
  )
  return { plan, lines: linesOfPlan(plan) }
}
const plans = new Map([1, 2].map((arms) => [arms, planOf(arms)]))

/** A floor for a draft, its doughs in an order drawn by the seed. */
export function setupOf(seed: string, draft: Draft): FloorSetup {
  const found = standardMeasures.find(({ code }) => code === draft.measure)!
  const {
    plan: { arms },
    lines,
  } = plans.get(draft.arms)!
  const declared = { mixingDays: draft.days, batchesPerArm: draft.doughs }
  const plan: PlannedOrder = { arms, order: orderOfPlan({ seed, declared, arms }).plan }
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
    doughs: plan.order.batches.map(({ code, arm, day, place }) => ({
      id: `dough ${code}`,
      code,
      arm,
      day,
      plannedOrder: place,
    })),
    plan,
    lines,
    timeZone: 'UTC',
    player: { bakeryId: 'bakery', id: 'player', name: 'Pip' },
    begin: new Date('2026-03-02T04:00:00.000Z'),
  }
}
