import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { Tx } from '../../db/client'
import { loadRangeFacts } from './load-range-facts'
import { lockBatches } from './lock-batches'
import type { ReadingEntry } from './reading-content.input'
import {
  keyOfPlace,
  type AsideFacts,
  type HoldingReading,
  type KnownReading,
  type MeasureFacts,
  type ReadingFacts,
  type ReadingPlace,
} from './reading-facts'

/** As JSON has it: a moment is its text. */
type Found = {
  readings: (Omit<KnownReading, 'takenAt' | 'receivedAt'> & { takenAt: string; receivedAt: string })[]
  aside: (AsideFacts & { entryId: string })[]
  measures: MeasureFacts[]
  holding: (ReadingPlace & HoldingReading)[]
}

/**
 * Locks the batches that entries are of, with their trials before them as `lockBatch` does, all in one order, and loads
 * what they are judged by: a few statements, however many entries. What is not of this bakery is not there.
 */
export async function loadReadingFacts(
  tx: Tx,
  bakeryId: string,
  entries: readonly ReadingEntry[],
): Promise<ReadingFacts> {
  const own = idsOf(entries.map(({ id }) => id))
  const wrong = idsOf(entries.flatMap((entry) => ('supersedesId' in entry ? [entry.supersedesId] : [])))
  const named = [...new Set([...own, ...wrong])]
  const batches = await lockBatches(
    tx,
    bakeryId,
    idsOf(entries.flatMap((entry) => ('supersedesId' in entry ? [] : [entry.batchId]))),
    wrong,
  )
  const measureIds = idsOf(entries.flatMap((entry) => ('supersedesId' in entry ? [] : [entry.measureId])))
  const [found] = await tx.$queryRaw<[Found]>`
    SELECT
      (SELECT coalesce(json_agg(known), '[]') FROM (
        SELECT id, trial_id AS "trialId", batch_id AS "batchId", measure_id AS "measureId", piece, factor_level AS "factorLevel", repeat, value,
          value_entered AS "valueEntered", unit_entered AS "unitEntered", content_hash AS "contentHash", person_id AS "personId",
          taken_at AS "takenAt", received_at AS "receivedAt", plausible_least AS "plausibleLeast", plausible_most AS "plausibleMost",
          EXISTS (SELECT 1 FROM reading later WHERE later.bakery_id = reading.bakery_id AND later.supersedes_id = reading.id) AS "isCorrected"
        FROM reading WHERE bakery_id = ${bakeryId}::uuid AND id = ANY(${named}::uuid[])
      ) known) AS readings,
      (SELECT coalesce(json_agg(kept), '[]') FROM (
        SELECT entry_id AS "entryId", hash, why, trial_id AS "trialId", batch_id AS "batchId"
        FROM entry_to_settle WHERE bakery_id = ${bakeryId}::uuid AND entry_id = ANY(${named}::uuid[])
      ) kept) AS aside,
      (SELECT coalesce(json_agg(asked), '[]') FROM (
        SELECT id, code, name, unit, level, derivation, repeats, repeat_limit AS "repeatLimit", plausible_least AS "plausibleLeast", plausible_most AS "plausibleMost"
        FROM measure WHERE bakery_id = ${bakeryId}::uuid AND id IN (
          SELECT unnest(${measureIds}::uuid[]) UNION SELECT measure_id FROM reading WHERE bakery_id = ${bakeryId}::uuid AND id = ANY(${named}::uuid[]))
      ) asked) AS measures,
      (SELECT coalesce(json_agg(held), '[]') FROM (
        SELECT place.batch_id AS "batchId", place.measure_id AS "measureId", place.piece, place.factor_level AS "factorLevel", place.repeat, reading.id, reading.value
        FROM reading_place place JOIN reading ON reading.bakery_id = place.bakery_id AND reading.id = place.reading_id
        WHERE place.bakery_id = ${bakeryId}::uuid AND place.batch_id = ANY(${batches.map(({ id }) => id)}::uuid[]) AND place.measure_id IN (
          SELECT unnest(${measureIds}::uuid[]) UNION SELECT measure_id FROM reading WHERE bakery_id = ${bakeryId}::uuid AND id = ANY(${named}::uuid[]))
      ) held) AS holding`
  const { aside, measures, holding } = found
  const readings = found.readings.map(
    ({ takenAt, receivedAt, ...reading }): KnownReading => ({
      ...reading,
      takenAt: new Date(takenAt),
      receivedAt: new Date(receivedAt),
    }),
  )
  const ranges: ReadingFacts['ranges'] = new Map()
  for (const trialId of new Set(batches.map((batch) => batch.trialId)))
    ranges.set(trialId, await loadRangeFacts(tx, bakeryId, { trialId }, measures))
  return {
    batches: byId(batches),
    measures: byId(measures),
    readings: byId(readings),
    places: groupBy(holding, keyOfPlace),
    ranges,
    aside: groupBy(aside, ({ entryId }) => entryId),
  }
}

function idsOf(ids: readonly string[]): string[] {
  return [...new Set(ids.map((id) => id.toLowerCase()))]
}

function byId<Row extends { id: string }>(rows: readonly Row[]): Map<string, Row> {
  return new Map(rows.map((row) => [row.id, row]))
}
