const passwordFields = new Set(['password', 'newPassword'])

/** Texts of a form by their field's name: no files, no passwords, nothing of the framework's own. */
export function typedIn(form: FormData): Record<string, string> {
  const values: Record<string, string> = {}
  for (const [name, value] of form) {
    if (typeof value === 'string' && !passwordFields.has(name) && !name.startsWith('$')) values[name] = value
  }
  return values
}
