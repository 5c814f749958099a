import { formIdName, type FormAction } from './form-state'

/**
 * An action that is sent with its form's id. The id stays while nobody knows whether the form was done, so that sending it
 * again does nothing more; once it was, the form is another one.
 * @param formId holds it between the sendings
 */
export function countOnce(action: FormAction, formId: { current: string | null }): FormAction {
  return async (former, form) => {
    formId.current ??= crypto.randomUUID()
    form.set(formIdName, formId.current)
    const answer = await action(former, form)
    if (answer.done) formId.current = null
    return answer
  }
}
