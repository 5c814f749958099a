import type { FormAction } from './form-state'
import { typedIn } from './typed-in'
import { wordsOfNoAnswer } from './words-of-no-answer'

/**
 * An action that does not answer, or breaks, gives its form back with everything typed, passwords apart. The error
 * page would throw that away.
 */
export function keepTyped(action: FormAction): FormAction {
  return async (former, form) => {
    try {
      return await action(former, form)
    } catch (error) {
      return {
        answers: former.answers + 1,
        values: typedIn(form),
        problems: {},
        refusal: wordsOfNoAnswer(error),
        isStale: false,
        given: null,
        done: null,
      }
    }
  }
}
