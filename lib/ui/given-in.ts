import { isKeptField } from './typed-in'

/**
 * What a page gives the fields of a form, whatever was typed since, also before the page's script was there: read from what
 * the fields fall back to. In the order and form of `typedIn`, with which it is compared.
 */
export function givenIn(form: HTMLFormElement): Record<string, string> {
  const values: Record<string, string> = {}
  for (const field of form.elements) {
    if (
      !(field instanceof HTMLInputElement || field instanceof HTMLSelectElement || field instanceof HTMLTextAreaElement)
    )
      continue
    const value = field.disabled || !isKeptField(field.name) ? null : valueGiven(field)
    if (value !== null) values[field.name] = value.replaceAll(/\r\n?/g, '\n')
  }
  return values
}

function valueGiven(field: HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement): string | null {
  if (field instanceof HTMLSelectElement) {
    const options = [...field.options]
    return (options.find((option) => option.defaultSelected) ?? options[0])?.value ?? null
  }
  if (field.type === 'checkbox' || field.type === 'radio')
    return field instanceof HTMLInputElement && field.defaultChecked ? field.value : null
  return ['file', 'submit', 'button', 'reset', 'image'].includes(field.type) ? null : field.defaultValue
}
