import 'server-only'
import { isOutState } from './is-out-state'

/**
 * Why a dough may not be baked again; null when it may. Only one that is out is, once and within its own mixing day, which
 * all doughs of that day share; where another day was added instead, that stands for it. What was made for it is a dough
 * like any other, and may itself be lost and baked again.
 */
export function whyNotBakedAgain(q: {
  state: string
  isBakedAgain: boolean
  isDayOver: boolean
  isDayAddedFor: boolean
}): 'not-out' | 'baked-again-already' | 'day-added-for' | 'mixing-day-over' | null {
  if (!isOutState(q.state)) return 'not-out'
  if (q.isBakedAgain) return 'baked-again-already'
  if (q.isDayAddedFor) return 'day-added-for'
  return q.isDayOver ? 'mixing-day-over' : null
}
