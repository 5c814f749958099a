import 'server-only'
import { outState, type OutState } from './out-state.input'

/** Whether a state of a dough is an end that is not the plan's. */
export function isOutState(state: string): state is OutState {
  return outState.options.some((each) => each === state)
}
