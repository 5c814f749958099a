/** A text field of a form, as it was typed. */
export function textOf(form: FormData, name: string): string {
  const value = form.get(name)
  return typeof value === 'string' ? value : ''
}
