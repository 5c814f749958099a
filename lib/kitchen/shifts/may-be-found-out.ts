import 'server-only'
import type { BatchStateName } from '../batches/batch-state.input'
import { Refusal } from '../refusal'

/** Whether something may be found later of a batch: one that was begun, and is not out already. */
export function isFoundOutFrom(state: BatchStateName): boolean {
  return whyNotFoundOut(state) === null
}

/** Refuses a cause that is found later of such a batch: batch-not-begun, batch-not-baked, not-the-next-step. */
export function mayBeFoundOut(state: BatchStateName): void {
  const fault = whyNotFoundOut(state)
  if (fault) throw new Refusal(fault)
}

function whyNotFoundOut(state: BatchStateName): 'batch-not-begun' | 'batch-not-baked' | 'not-the-next-step' | null {
  switch (state) {
    case 'weighing':
    case 'in_work':
    case 'baked':
    case 'measured':
      return null
    case 'waiting':
      return 'batch-not-begun'
    case 'not_baked':
      return 'batch-not-baked'
    case 'lost':
    case 'set_aside':
      return 'not-the-next-step'
    default:
      return state satisfies never
  }
}
