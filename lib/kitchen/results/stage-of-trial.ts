import 'server-only'
import type { BatchCount } from './count-batches'
import type { DeclaredTrial } from './trial-facts'

/** `before`: no approved plan; `in-progress`: the planned mixing days are not all in. */
export type TrialStage = 'before' | 'in-progress' | 'whole' | 'stopped-early'

/** How far a trial is, by its state and by the batches that count. */
export function stageOfTrial(
  declared: Pick<DeclaredTrial, 'state' | 'mixingDays'>,
  count: Pick<BatchCount, 'open' | 'daysCounted'>,
): TrialStage {
  switch (declared.state) {
    case 'draft':
    case 'proposed':
    case 'declined':
      return 'before'
    case 'approved':
    case 'baking':
      return count.open === 0 && count.daysCounted.length >= declared.mixingDays ? 'whole' : 'in-progress'
    case 'closed':
      return 'whole'
    case 'stopped':
      return 'stopped-early'
    default:
      return declared.state satisfies never
  }
}

/** Whether arms may be compared: the planned mixing days are in, or the trial was ended. */
export function isIn(stage: TrialStage): boolean {
  return stage === 'whole' || stage === 'stopped-early'
}
