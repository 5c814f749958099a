/** The ids of a field's hint and error, for aria-describedby; undefined when it has neither. The error comes first. */
export function describedBy(id: string, hint: unknown, error: unknown): string | undefined {
  const ids = [error ? `${id}-error` : null, hint ? `${id}-hint` : null].filter((each) => each !== null)
  return ids.length > 0 ? ids.join(' ') : undefined
}
