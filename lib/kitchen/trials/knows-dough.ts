import 'server-only'
import type { TrialState } from '../../db/generated/enums'
import { isKeyOpen } from './rules'

/**
 * Whether somebody knows what a dough is: its key is open to everybody, or they opened its own, or that of its trial as
 * its plan stands.
 * @param opened of this dough by them, and `openedKeys` of its trial by them
 */
export function knowsDough({
  trial,
  opened,
}: {
  trial: { state: TrialState; planHash: string | null; openedKeys: readonly { planHash: string }[] }
  opened: readonly unknown[]
}): boolean {
  return (
    isKeyOpen(trial.state) || opened.length > 0 || trial.openedKeys.some(({ planHash }) => planHash === trial.planHash)
  )
}
