import { db } from '../../../db/client'

/**
 * Holds what the book said it has against what is in it, read past the app.
 * @param kept hashes by the ids of entries
 * @returns ids that are missing, ids whose hash is another one, and what more there is of these doughs
 */
export async function holdAgainstBook(
  kept: ReadonlyMap<string, string>,
  batchIds: readonly string[],
): Promise<{ lost: string[]; changed: string[]; more: string[] }> {
  const rows = await db().reading.findMany({
    where: { batchId: { in: [...batchIds] } },
    select: { id: true, contentHash: true },
  })
  const there = new Map(rows.map(({ id, contentHash }) => [id, contentHash]))
  return {
    lost: [...kept.keys()].filter((id) => !there.has(id)),
    changed: [...kept].filter(([id, hash]) => there.has(id) && there.get(id) !== hash).map(([id]) => id),
    // An id is there once, by its key: what was kept twice would be there under another one.
    more: [...there.keys()].filter((id) => !kept.has(id)),
  }
}
