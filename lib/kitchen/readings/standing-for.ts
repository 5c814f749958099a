import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { ReadingContent } from '../../documents/reading/text-of-reading.input'

/**
 * The readings that hold where entries belong, by one statement for all of them: for a reading what is in its place; for
 * a correction what now holds for the one that it corrects, however often that was corrected since. One that was
 * aside itself stands for what it was taken as.
 * @returns the reading's id for each entry, in their order; null where nothing holds
 */
export async function standingFor(
  from: Db | Tx,
  bakeryId: string,
  entries: readonly ReadingContent[],
): Promise<(string | null)[]> {
  if (entries.length === 0) return []
  const asked = entries.map(({ batch, measure, piece, factorLevel, repeat, supersedes }, at) => ({
    at,
    batch,
    measure,
    piece,
    factorLevel,
    repeat,
    supersedes,
  }))
  const standing = await from.$queryRaw<{ at: number; id: string }[]>`
    WITH RECURSIVE asked AS (
      SELECT * FROM jsonb_to_recordset(${JSON.stringify(asked)}::jsonb)
        AS entry (at int, batch uuid, measure uuid, piece int, "factorLevel" text, repeat int, supersedes uuid)
    ), chain AS (
      SELECT asked.at, coalesce(own.id, taken.reading_id) AS id
      FROM asked
      LEFT JOIN reading own ON own.bakery_id = ${bakeryId}::uuid AND own.id = asked.supersedes
      LEFT JOIN LATERAL (
        SELECT reading_id FROM settled_entry
        WHERE bakery_id = ${bakeryId}::uuid AND entry_id = asked.supersedes AND reading_id IS NOT NULL
        ORDER BY settled_entry.at LIMIT 1
      ) taken ON own.id IS NULL
      WHERE asked.supersedes IS NOT NULL
      UNION
      SELECT chain.at, later.id FROM chain JOIN reading later ON later.bakery_id = ${bakeryId}::uuid AND later.supersedes_id = chain.id
    )
    SELECT chain.at, chain.id FROM chain
    JOIN reading_place place ON place.bakery_id = ${bakeryId}::uuid AND place.reading_id = chain.id
    UNION ALL
    SELECT asked.at, place.reading_id FROM asked
    JOIN reading_place place ON place.bakery_id = ${bakeryId}::uuid AND place.batch_id = asked.batch AND place.measure_id = asked.measure
      AND place.repeat = asked.repeat AND place.piece IS NOT DISTINCT FROM asked.piece AND place.factor_level IS NOT DISTINCT FROM asked."factorLevel"
    WHERE asked.supersedes IS NULL`
  const idAt = new Map(standing.map(({ at, id }) => [at, id]))
  return entries.map((_, at) => idAt.get(at) ?? null)
}
