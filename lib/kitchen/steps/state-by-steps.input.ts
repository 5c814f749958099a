import type { BatchStateName } from '../batches/batch-state.input'
import { stepOf } from './course-of-dough.input'
import { standingSteps } from './standing-steps.input'
import type { StepKind } from './step-kinds.input'

type Entered = { id: string; step: StepKind; isDone: boolean; supersedesId: string | null; at: Date }

/** Where a dough is, and when it came out of the oven. */
export type Whereabouts = { state: BatchStateName; bakedAt: Date | null }

/**
 * Where a dough is by its steps: in work once anything was done with it, and baked from when it came out of the oven, also
 * where somebody at the desk said that before without knowing when. A step that had not been done takes the dough back
 * where it was the one that moved it. What is measured keeps its state and only its moment is put right; of a dough that is
 * out, or not begun, steps change nothing.
 * @param entered all steps of the dough, corrections as well
 */
export function stateBySteps(now: Whereabouts, entered: readonly Entered[]): Whereabouts {
  const stood = standingSteps(entered).map((step) => ({ ...step, atMs: step.at.getTime() }))
  const out = stepOf(stood, 'out_of_oven')
  switch (now.state) {
    case 'weighing':
    case 'in_work':
      if (out) return { state: 'baked', bakedAt: out.at }
      return stood.length > 0 ? { ...now, state: 'in_work' } : now
    case 'baked':
      if (out) return { ...now, bakedAt: out.at }
      return cameFromStep(now, entered) ? { state: 'in_work', bakedAt: null } : now
    case 'measured':
      return out && now.bakedAt !== null ? { ...now, bakedAt: out.at } : now
    case 'waiting':
    case 'lost':
    case 'set_aside':
    case 'not_baked':
      return now
    default:
      return now.state satisfies never
  }
}

/** Whether the dough is baked since the very moment of a step that stands no more. */
function cameFromStep({ bakedAt }: Whereabouts, entered: readonly Entered[]): boolean {
  return entered.some(
    ({ step, isDone, at }) =>
      step === 'out_of_oven' && isDone && bakedAt !== null && at.getTime() === bakedAt.getTime(),
  )
}

/** Whether two say the same. */
export function isSameWhereabouts(a: Whereabouts, b: Whereabouts): boolean {
  return a.state === b.state && a.bakedAt?.getTime() === b.bakedAt?.getTime()
}
