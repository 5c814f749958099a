const [onWhite, black, off] = ['\u001b[107m', '\u001b[30m', '\u001b[0m']
/** Squares of light around a code, which scanners ask for. */
const edge = 2

/** A code for a camera in the letters of a terminal, black on white whatever the terminal's own colours are. */
export function terminalCode(rows: readonly (readonly boolean[])[]): string {
  const size = rows.length + 2 * edge
  const at = (y: number, x: number) => rows[y - edge]?.[x - edge] ?? false
  const lines: string[] = []
  // Two rows of squares to a line: letters are twice as high as wide.
  for (let y = 0; y < size; y += 2) {
    const signs = Array.from({ length: size }, (_, x) => {
      const [upper, lower] = [at(y, x), at(y + 1, x)]
      return upper ? (lower ? '█' : '▀') : lower ? '▄' : ' '
    })
    lines.push(`${onWhite}${black}${signs.join('')}${off}`)
  }
  return lines.join('\n')
}
