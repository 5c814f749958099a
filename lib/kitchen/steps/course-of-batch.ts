import 'server-only'
import { byMoment, outOfOrder, timerOf, type PlannedTimes } from './course-of-dough.input'
import { standingSteps } from './standing-steps.input'
import type { StepKind } from './step-kinds.input'

type Entered = { id: string; step: StepKind; isDone: boolean; supersedesId: string | null; at: Date }

/** The steps of a dough that stand, in their order, each with whether it is out of it; and what runs, until when. */
export function courseOfBatch<Step extends Entered>(entered: readonly Step[], times: PlannedTimes) {
  const stood = standingSteps(entered)
    .map((step) => ({ ...step, atMs: step.at.getTime() }))
    .sort(byMoment)
  const odd = outOfOrder(stood)
  const timer = timerOf(stood, times)
  return {
    steps: stood.map((step) => ({ ...step, isOdd: odd.includes(step) })),
    runs: timer && { phase: timer.phase, until: new Date(timer.endsMs) },
  }
}
