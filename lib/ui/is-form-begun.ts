import { givenIn } from './given-in'
import { isSecretField, typedIn } from './typed-in'

/**
 * Whether somebody has begun to fill in a form: what stands in it is not what the page gave, it was refused, or it came
 * back from a draft (`data-begun`). One that keeps what is typed by itself, in fields without names, is none.
 */
export function isFormBegun(form: HTMLFormElement): boolean {
  if (form.dataset.begun === 'true') return true
  const isHidden = [...form.elements].some(
    (field) =>
      field instanceof HTMLInputElement && field.value !== '' && (field.type === 'file' || isSecretField(field.name)),
  )
  return isHidden || JSON.stringify(typedIn(new FormData(form))) !== JSON.stringify(givenIn(form))
}
