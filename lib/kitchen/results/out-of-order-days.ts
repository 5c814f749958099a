import 'server-only'

/** Mixing days on which the doughs were begun in another order than the drawn one. */
export function outOfOrderDays(
  batches: readonly { day: number; plannedOrder: number; begunAt: Date | null }[],
): number[] {
  const days = [...new Set(batches.map(({ day }) => day))]
  return days.filter((day) => {
    const asDrawn = batches
      .filter((batch) => batch.day === day)
      .sort((a, b) => a.plannedOrder - b.plannedOrder)
      .flatMap(({ begunAt }) => begunAt?.getTime() ?? [])
    const asBegun = [...asDrawn].sort((a, b) => a - b)
    return asDrawn.some((begun, i) => begun !== asBegun[i])
  })
}
