import { db } from '@/lib/db/client'
import { currentReadings } from '@/lib/kitchen/readings/current-readings'

/** Where readings hold: by the table of places, and by following every correction. A test compares the two. */
export async function placesTwice(): Promise<{ byTable: string[]; byReadings: string[] }> {
  const columns = { batchId: true, measureId: true, piece: true, factorLevel: true, repeat: true } as const
  const places = await db().readingPlace.findMany({ select: { readingId: true, ...columns } })
  const readings = await db().reading.findMany({
    select: { id: true, supersedesId: true, receivedAt: true, ...columns },
  })
  return {
    byTable: places.map(({ readingId, ...place }) => lineOf(readingId, place)).sort(),
    byReadings: currentReadings(readings)
      .map(({ id, supersedesId: _, receivedAt: __, ...place }) => lineOf(id, place))
      .sort(),
  }
}

function lineOf(
  id: string,
  {
    batchId,
    measureId,
    piece,
    factorLevel,
    repeat,
  }: { batchId: string; measureId: string; piece: number | null; factorLevel: string | null; repeat: number },
): string {
  return [batchId, measureId, piece, factorLevel, repeat, id].join(' ')
}
