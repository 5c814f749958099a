import 'server-only'
import { Prisma } from '../../db/generated/client'

export type ReadBy = {
  measure: { code: string | null; name: string }
  /** Readings of it in the book, corrected ones among them. */
  readings: number
  /** Of them entered by somebody who had opened the key of the trial or of that dough before. */
  byKnowers: number
  /** Of them of doughs whose key nobody had opened by then, so that nothing is kept of who knew what was mixed. */
  unknown: number
}

export type ReadRow = {
  code: string | null
  name: string
  readings: number
  byKnowers: number
  unknown: number
  corrections: string[] | null
}

/**
 * Of each measure that was read in a trial, how many readings were entered by somebody who knew what the dough was, and
 * which corrections were. They knew when they had opened the key before the reading was in the book: the time that a
 * device gives it is not asked, because whoever looked may set it. At the same moment the key counts as opened before.
 */
export function readByKnowers({
  bakeryId,
  trialId,
  planHash,
}: {
  bakeryId: string
  trialId: string
  planHash: string | null
}): Prisma.Sql {
  return Prisma.sql`
    SELECT measure.code, measure.name, count(*)::int AS readings,
      count(*) FILTER (WHERE read.knew)::int AS "byKnowers",
      count(*) FILTER (WHERE NOT read.anybody)::int AS unknown,
      array_agg(read.id::text) FILTER (WHERE read.knew AND read.supersedes_id IS NOT NULL) AS corrections
    FROM (
      SELECT reading.id, reading.measure_id, reading.supersedes_id,
        count(*) FILTER (WHERE known.person_id = reading.person_id) > 0 AS knew,
        count(known.person_id) > 0 AS anybody
      FROM reading
      LEFT JOIN (
        SELECT NULL::uuid AS batch_id, person_id, at FROM opened_key
        WHERE bakery_id = ${bakeryId}::uuid AND trial_id = ${trialId}::uuid AND plan_hash = ${planHash}
        UNION ALL
        SELECT batch_id, person_id, at FROM opened_dough_key
        WHERE bakery_id = ${bakeryId}::uuid AND trial_id = ${trialId}::uuid
      ) AS known
        ON known.at <= reading.received_at AND (known.batch_id IS NULL OR known.batch_id = reading.batch_id)
      WHERE reading.bakery_id = ${bakeryId}::uuid AND reading.trial_id = ${trialId}::uuid
      GROUP BY reading.bakery_id, reading.id
    ) AS read
    JOIN measure ON measure.bakery_id = ${bakeryId}::uuid AND measure.id = read.measure_id
    GROUP BY measure.id, measure.code, measure.name
    ORDER BY measure.name`
}

/** What `readByKnowers` found. */
export function whoRead(rows: readonly ReadRow[]): { measures: ReadBy[]; correctedKnowing: Set<string> } {
  return {
    measures: rows.map(({ code, name, readings, byKnowers, unknown }) => ({
      measure: { code, name },
      readings,
      byKnowers,
      unknown,
    })),
    correctedKnowing: new Set(rows.flatMap(({ corrections }) => corrections ?? [])),
  }
}
