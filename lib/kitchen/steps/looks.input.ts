import { byMoment, stepOf, type PlannedTimes, type StoodStep } from './course-of-dough.input'
import { stepKinds, type StepKind } from './step-kinds.input'

/** After how long somebody is called to look at a dough, and the longest that it waits, min; null where nobody is called. */
export type Looks = {
  foldEveryMin: number | null
  restLookMin: number | null
  restMostMin: number | null
  coolLookMin: number | null
  coolMostMin: number | null
  retardLookMin: number | null
  retardMostMin: number | null
}

/** As long as a bakery has said nothing. */
export const noLooks: Looks = {
  foldEveryMin: null,
  restLookMin: null,
  restMostMin: null,
  coolLookMin: null,
  coolMostMin: null,
  retardLookMin: null,
  retardMostMin: null,
}

/** What waits, from which step until which, and what is said of it. */
const waits = [
  { phase: 'rest', from: 'pre_shaped', until: 'moulded', look: 'restLookMin', most: 'restMostMin' },
  { phase: 'retard', from: 'retarding_begun', until: 'proof_begun', look: 'retardLookMin', most: 'retardMostMin' },
  { phase: 'cool', from: 'out_of_oven', until: 'cooled', look: 'coolLookMin', most: 'coolMostMin' },
] as const satisfies readonly { phase: string; from: StepKind; until: StepKind; look: keyof Looks; most: keyof Looks }[]

/** The field that is missing or too short, of a look and the longest wait, which are said together; null where all is well. */
export function oddWait(looks: Looks): { field: keyof Looks; code: 'missing' | 'not-above-look' } | null {
  for (const { look, most } of waits) {
    const [first, last] = [looks[look], looks[most]]
    if (first === null && last === null) continue
    if (first === null) return { field: look, code: 'missing' }
    if (last === null) return { field: most, code: 'missing' }
    if (last <= first) return { field: most, code: 'not-above-look' }
  }
  return null
}

export type LookPhase = 'fold' | (typeof waits)[number]['phase']

/** That somebody is to look at a dough, again and again, until it has waited longest or what it waits for is done. */
export type Look = {
  /** The step that it counts from. */
  stepId: string
  phase: LookPhase
  fromMs: number
  everyMs: number
  /** When it has waited longest; of folds when bulk is over, which its own timer tells. */
  mostMs: number
}

/** What somebody is to look at of a dough; null where nothing waits, or nobody is to be called. */
export function lookOf(steps: readonly StoodStep[], looks: Looks, planned: PlannedTimes): Look | null {
  const furthest = Math.max(-1, ...steps.map(({ step }) => stepKinds.indexOf(step)))
  const isBetween = (from: StepKind, until: StepKind) =>
    stepKinds.indexOf(from) <= furthest && furthest < stepKinds.indexOf(until)
  const wait = waits.find(({ from, until }) => isBetween(from, until))
  if (wait) {
    const [from, lookMin, mostMin] = [stepOf(steps, wait.from), looks[wait.look], looks[wait.most]]
    if (!from || lookMin === null || mostMin === null) return null
    const fromMs = from.atMs
    return {
      stepId: from.id,
      phase: wait.phase,
      fromMs,
      everyMs: lookMin * minuteMs,
      mostMs: fromMs + mostMin * minuteMs,
    }
  }
  const mixed = stepOf(steps, 'mixed')
  if (!mixed || looks.foldEveryMin === null || !isBetween('mixed', 'scaled')) return null
  const last =
    steps
      .filter(({ step }) => step === 'folded')
      .sort(byMoment)
      .at(-1) ?? mixed
  const from = last.atMs < mixed.atMs ? mixed : last
  const [fromMs, everyMs] = [from.atMs, looks.foldEveryMin * minuteMs]
  const mostMs = mixed.atMs + planned.bulkTimeS * 1000
  return fromMs + everyMs < mostMs ? { stepId: from.id, phase: 'fold', fromMs, everyMs, mostMs } : null
}

const minuteMs = 60_000

/** How a look stands: the moment that it calls at, or called at last, by what it is silenced, and whether it has waited longest. */
export type LookNow = { key: string; endsMs: number; isLongest: boolean }

/** A look at a moment; of folds null once bulk is over. */
export function lookAt({ stepId, phase, fromMs, everyMs, mostMs }: Look, nowMs: number): LookNow | null {
  if (nowMs >= mostMs) return phase === 'fold' ? null : { key: `${stepId} most`, endsMs: mostMs, isLongest: true }
  const nth = Math.max(1, Math.floor((nowMs - fromMs) / everyMs))
  return { key: `${stepId} ${nth}`, endsMs: fromMs + nth * everyMs, isLongest: false }
}
