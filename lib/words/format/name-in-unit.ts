/** The head of a column of figures: what they are and in which unit, 'Mass, g'. The sign between is no word. */
export function nameInUnit(name: string, unit: string): string {
  return `${name}, ${unit}`
}
