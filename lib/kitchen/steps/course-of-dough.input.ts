import { stepKinds, type StepKind } from './step-kinds.input'

/** A step that stands: nothing took its place, and it was done. */
export type StoodStep = { id: string; step: StepKind; atMs: number }

/** How long the plan gives to what is timed. */
export type PlannedTimes = { mixTimeS: number; bulkTimeS: number; proofTimeS: number; bakeTimeS: number }

export type Phase = 'mix' | 'bulk' | 'proof' | 'bake'

export type DoughTimer = {
  /** Of the step that it runs from; another step is another timer. */
  stepId: string
  phase: Phase
  fromMs: number
  endsMs: number
  plannedS: number
}

/** What runs from a step on, and the first step that ends it. */
const timed: readonly { phase: Phase; from: StepKind; until: StepKind; planned: keyof PlannedTimes }[] = [
  { phase: 'mix', from: 'mixing_begun', until: 'mixed', planned: 'mixTimeS' },
  { phase: 'bulk', from: 'mixed', until: 'scaled', planned: 'bulkTimeS' },
  { phase: 'proof', from: 'proof_begun', until: 'in_oven', planned: 'proofTimeS' },
  { phase: 'bake', from: 'in_oven', until: 'out_of_oven', planned: 'bakeTimeS' },
]

/** What a dough can do without, or not every dough has. */
const optional: readonly StepKind[] = ['folded', 'pre_shaped', 'retarding_begun', 'scored']

/** Of one step that several people entered, the earliest counts. @returns null where none stands */
export function stepOf<Step extends StoodStep>(steps: readonly Step[], step: StepKind): Step | null {
  const [first] = steps.filter((each) => each.step === step).sort(byMoment)
  return first ?? null
}

/** Steps in the order in which they were done; at one moment in the order of the trade. */
export function byMoment(a: StoodStep, b: StoodStep): number {
  return a.atMs - b.atMs || placeOf(a.step) - placeOf(b.step) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
}

/**
 * What runs for a dough: of the step that is furthest on in the order of the trade, whatever clocks say, because a
 * clock that is wrong must not bring a dough back into the mixer. Null where nothing is timed.
 */
export function timerOf(steps: readonly StoodStep[], planned: PlannedTimes): DoughTimer | null {
  const furthest = furthestOf(steps)
  const runs = timed.find(({ from, until }) => placeOf(from) <= furthest && furthest < placeOf(until))
  const from = runs && stepOf(steps, runs.from)
  if (!from) return null
  const plannedS = planned[runs.planned]
  return {
    stepId: from.id,
    phase: runs.phase,
    fromMs: from.atMs,
    endsMs: from.atMs + plannedS * 1000,
    plannedS,
  }
}

/**
 * What is done with a dough next, and what else can be entered: any step that does not stand yet, also one that was
 * forgotten, and a fold as often as somebody folds.
 */
export function stepsToCome(steps: readonly StoodStep[]): { next: StepKind | null; others: StepKind[] } {
  const furthest = furthestOf(steps)
  const next = stepKinds.find((step) => placeOf(step) > furthest && !optional.includes(step)) ?? null
  const others = stepKinds.filter(
    (step) => step !== next && (step === 'folded' || !steps.some((each) => each.step === step)),
  )
  return { next, others }
}

/** The kinds that stand before one that comes earlier in the trade's order: somebody entered one of the two wrongly. */
export function outOfOrder<Step extends StoodStep>(steps: readonly Step[]): Step[] {
  return steps.filter((step) =>
    steps.some(
      (other) => placeOf(other.step) < placeOf(step.step) && other.atMs > step.atMs && other.step !== 'folded',
    ),
  )
}

function placeOf(step: StepKind): number {
  return stepKinds.indexOf(step)
}

function furthestOf(steps: readonly StoodStep[]): number {
  return Math.max(-1, ...steps.map(({ step }) => placeOf(step)))
}
