/** Digits after the mark that a step needs: none for 5, one for 0.5, two for 0.05 and for 0.25; six at most. */
export function digitsOfStep(step: number): number {
  return Math.min(6, Math.max(0, digitsThatShow(step)))
}

function digitsThatShow(step: number): number {
  const least = Math.ceil(-Math.log10(step) - 1e-9)
  for (let digits = Math.max(0, least); digits < least + 2; digits++)
    if (Math.abs(step * 10 ** digits - Math.round(step * 10 ** digits)) < 1e-9) return digits
  return least
}
