/** The squares of a code as text, row by row, 1 where dark: a form's answer holds nothing but text. */
export function squaresToText(rows: readonly (readonly boolean[])[]): string {
  return rows.map((row) => row.map((dark) => (dark ? '1' : '0')).join('')).join(' ')
}

/** The squares out of `squaresToText`. */
export function squaresOfText(text: string): boolean[][] {
  return text.split(' ').map((row) => Array.from(row, (square) => square === '1'))
}
