/**
 * Maps a value to a place, straight on beyond the ends too.
 * @param domain two different values; @param range the places of those two
 * @throws RangeError when the domain has no width
 * @example linearScale({ domain: [0, 10], range: [100, 200] })(5) // 150
 */
export function linearScale(q: {
  domain: readonly [number, number]
  range: readonly [number, number]
}): (value: number) => number {
  const [from, to] = q.domain
  const [start, end] = q.range
  if (!(Math.abs(to - from) > 0) || !Number.isFinite(to - from)) throw new RangeError(`no width: ${from} to ${to}`)
  return (value) => start + ((value - from) / (to - from)) * (end - start)
}
