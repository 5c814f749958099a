/** By how much the book's clock is ahead of the tablet's, ms, as it was when the floor was fetched last. */
export function clockAheadMs(floor: { value: { now: string }; at: number }): number {
  return Date.parse(floor.value.now) - floor.at
}
