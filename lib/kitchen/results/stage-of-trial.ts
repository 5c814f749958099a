import 'server-only'
import type { BatchCount } from './count-batches'
import type { DeclaredTrial } from './trial-facts'

/** `before`: no approved plan; `in-progress`: doughs are open; `all-in`: none is, and the readings are not closed. */
export type TrialStage = 'before' | 'in-progress' | 'all-in' | 'whole' | 'stopped-early'

/** How far a trial is, by its state and by the batches that are still to be baked or measured. */
export function stageOfTrial(declared: Pick<DeclaredTrial, 'state'>, count: Pick<BatchCount, 'open'>): TrialStage {
  switch (declared.state) {
    case 'draft':
    case 'proposed':
    case 'declined':
      return 'before'
    case 'approved':
    case 'baking':
      return count.open === 0 ? 'all-in' : 'in-progress'
    case 'closed':
      return 'whole'
    case 'stopped':
      return 'stopped-early'
    default:
      return declared.state satisfies never
  }
}

/**
 * Whether arms may be compared: only when the readings are closed. Whoever sees a comparison before can correct, repeat
 * and set aside towards what they hope for.
 */
export function mayCompare(stage: TrialStage): boolean {
  return stage === 'whole' || stage === 'stopped-early'
}
