/** Refusals until somebody has looked again: what was read or weighed is far from what is usual. */
export function isOdd(refusal: string | null): boolean {
  return refusal === 'odd-reading' || refusal === 'odd-weighing'
}
