import 'server-only'
import type { TrialState } from '../../db/generated/enums'
import { Refusal } from '../refusal'

/** Refuses work on a trial that is not approved yet, or over: trial-not-approved, trial-closed, trial-stopped. */
export function mustBeOpen(state: TrialState): void {
  switch (state) {
    case 'approved':
    case 'baking':
      return
    case 'closed':
      throw new Refusal('trial-closed')
    case 'stopped':
      throw new Refusal('trial-stopped')
    case 'draft':
    case 'proposed':
    case 'declined':
      throw new Refusal('trial-not-approved')
    default:
      state satisfies never
      throw new Refusal('trial-not-approved')
  }
}
