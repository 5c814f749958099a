// What only its owner may know; a PIN is a password too.
const passwordFields = new Set(['password', 'newPassword', 'pin'])

/** Whether a field holds what only its owner may know. */
export function isSecretField(name: string): boolean {
  return passwordFields.has(name)
}

/** Whether what is in a field may be kept: not a password, nothing of the framework's own, and a field that has a name. */
export function isKeptField(name: string): boolean {
  return name !== '' && !isSecretField(name) && !name.startsWith('$')
}

/** Texts of a form by their field's name: no files, no passwords, nothing of the framework's own. */
export function typedIn(form: FormData): Record<string, string> {
  const values: Record<string, string> = {}
  for (const [name, value] of form) {
    if (typeof value === 'string' && isKeptField(name)) values[name] = value
  }
  return values
}
