import 'server-only'

type Chained = { id: string; supersedesId: string | null; receivedAt: Date }

/**
 * The readings that hold: each one that was corrected gives way to its correction, the correction to the correction of
 * it, and of two corrections of one reading the later received one stands (of two at one moment, the one with the
 * greater id). Order is that of the readings first entered.
 * @param readings all of a batch or a trial; one whose predecessor is not among them counts as first entered
 */
export function currentReadings<R extends Chained>(readings: readonly R[]): R[] {
  const ids = new Set(readings.map(({ id }) => id))
  const successor = new Map<string, R>()
  for (const reading of readings) {
    if (reading.supersedesId === null) continue
    const rival = successor.get(reading.supersedesId)
    if (!rival || isLater(reading, rival)) successor.set(reading.supersedesId, reading)
  }
  return readings
    .filter(({ supersedesId }) => supersedesId === null || !ids.has(supersedesId))
    .map((first) => {
      let last = first
      for (let next = successor.get(last.id); next; next = successor.get(last.id)) last = next
      return last
    })
}

function isLater(a: Chained, b: Chained): boolean {
  const difference = a.receivedAt.getTime() - b.receivedAt.getTime()
  return difference > 0 || (difference === 0 && a.id > b.id)
}
