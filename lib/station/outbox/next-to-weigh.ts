/** The line that is to be weighed next: the first after a line of which nothing is written, then the first of all. */
export function nextToWeigh<Line extends { key: string; stands: unknown }>(
  lines: readonly Line[],
  after: string | null,
): Line | null {
  const at = lines.findIndex(({ key }) => key === after) + 1
  return [...lines.slice(at), ...lines.slice(0, at)].find(({ stands }) => stands === null) ?? null
}
