import type { BakeTruth } from './bake-truth'
import type { PersonKey } from './crew'

/** A mixing day: when it begins, who mixes and bakes, and who weighs and measures the loaves. */
export type MixingShift = { daysAgo: number; start: string; mixes: PersonKey; measures: PersonKey }

/** The design of a demo trial, the same for the plan, for the bake and for the check over many seeds. */
export type BakedTrial = {
  /** Of several, one whose result is an ordinary one; how often the analysis would go wrong is checked over many others. */
  seed: string
  truth: BakeTruth
  mixingDays: number
  /** Of each arm, on each mixing day. */
  batchesPerArm: number
  piecesPerBatch: number
  /** Smallest difference worth having, % of the control. */
  marginPct: number
  confidencePct: number
  shifts: readonly MixingShift[]
  mishaps: readonly Mishap[]
  /** Mixing days on which it is written line by line what was weighed. */
  weighedDays: readonly number[]
}

/**
 * What went wrong with one dough: it was lost in the proofer, one loaf's weight was typed without its last digit, or a
 * line was weighed off the plan.
 */
export type Mishap = { day: number; arm: number } & (
  | { is: 'lost'; why: string }
  | { is: 'slip'; piece: number; reason: string }
  | { is: 'line-off'; ingredient: string; times: number }
)

/** Closed; its first arm has a real gain, its second a small one. */
export const wholemealTrial: BakedTrial = {
  seed: 'wholemeal tin, buttermilk or honey, 1',
  truth: { controlMlPerG: 2.92, gainShares: [0, 0.09, 0.015], bakeLossShare: 0.118 },
  mixingDays: 4,
  batchesPerArm: 1,
  piecesPerBatch: 4,
  marginPct: 4,
  confidencePct: 95,
  shifts: [
    { daysAgo: 52, start: '04:10', mixes: 'early', measures: 'early' },
    { daysAgo: 49, start: '04:20', mixes: 'late', measures: 'head' },
    { daysAgo: 45, start: '04:05', mixes: 'early', measures: 'late' },
    { daysAgo: 42, start: '04:15', mixes: 'late', measures: 'late' },
  ],
  mishaps: [{ day: 3, arm: 2, is: 'lost', why: 'The trolley was knocked on the way to the oven and the tins sank.' }],
  weighedDays: [],
}

/** Closed; its first arm has a real gain, its second none at all. */
export const oatTrial: BakedTrial = {
  seed: 'oat loaf, gluten or honey',
  truth: { controlMlPerG: 3.14, gainShares: [0, 0.085, 0], bakeLossShare: 0.136 },
  mixingDays: 4,
  batchesPerArm: 1,
  piecesPerBatch: 4,
  marginPct: 4,
  confidencePct: 95,
  shifts: [
    { daysAgo: 25, start: '04:10', mixes: 'late', measures: 'early' },
    { daysAgo: 22, start: '04:00', mixes: 'early', measures: 'early' },
    { daysAgo: 18, start: '04:20', mixes: 'late', measures: 'owner' },
    { daysAgo: 15, start: '04:10', mixes: 'early', measures: 'late' },
  ],
  mishaps: [
    { day: 2, arm: 1, is: 'slip', piece: 3, reason: 'Last digit not typed. The loaf was still on the scale.' },
    { day: 4, arm: 0, is: 'line-off', ingredient: 'Salt', times: 1.1 },
  ],
  weighedDays: [3, 4],
}

/** Being baked: two of its mixing days are in, the third is today's. */
export const whiteTinTrial: BakedTrial = {
  seed: 'white tin, butter or olive oil',
  truth: { controlMlPerG: 4.08, gainShares: [0, 0.05, 0.02], bakeLossShare: 0.112 },
  mixingDays: 4,
  batchesPerArm: 2,
  piecesPerBatch: 3,
  marginPct: 3,
  confidencePct: 95,
  shifts: [
    { daysAgo: 7, start: '04:05', mixes: 'early', measures: 'late' },
    { daysAgo: 4, start: '04:10', mixes: 'late', measures: 'early' },
  ],
  mishaps: [],
  weighedDays: [2],
}
