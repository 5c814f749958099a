import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import type { WeighingHow, WeighingPart } from '../../db/generated/enums'
import type { WeighedLot } from './judge-lots'

/** A weighing as it stands in the book. */
export type WeighingRow = {
  bakeryId: string
  id: string
  trialId: string
  batchId: string
  stageId: string
  ingredientId: string
  part: WeighingPart
  how: WeighingHow
  /** In g, and as it was typed; null where nothing was weighed. */
  massG: number | null
  massEntered: string | null
  unitEntered: string | null
  personId: string
  takenAt: Date
  receivedAt: Date
  /** The weighing that was wrong, and why. */
  supersedesId: string | null
  reason: string | null
  contentHash: string
  /** What it was taken from, in the order in which it was said. */
  lots: readonly WeighedLot[]
  /** At which tablet, for the lots that come in with it. */
  stationId: string | null
}

/**
 * Writes weighings in one statement, and the lots that they name in others. A lot that nobody has written down comes into
 * the stores with the first that names it; whoever is faster by a moment made it, and the others name theirs.
 */
export async function keepWeighings(tx: Tx, rows: readonly WeighingRow[]): Promise<void> {
  await tx.weighing.createMany({ data: rows.map(({ lots: _, stationId: __, ...row }) => row) })
  const named = rows.flatMap((row) =>
    row.lots.map((lot, position) => ({
      bakeryId: row.bakeryId,
      weighingId: row.id,
      ingredientId: row.ingredientId,
      position,
      ...lot,
    })),
  )
  if (named.length === 0) return
  const isNew = ({ lotId }: WeighedLot) => lotId === null
  if (named.some(isNew)) await bringInLots(tx, rows)
  await linkLots(tx, named)
}

/** In the order of their codes, so that two requests do not wait for each other crosswise. */
async function bringInLots(tx: Tx, rows: readonly WeighingRow[]): Promise<void> {
  const said = rows.flatMap(({ bakeryId, id, ingredientId, personId, receivedAt, takenAt, stationId, lots }) =>
    lots.flatMap(({ lotId, codeEntered }) =>
      lotId === null
        ? [
            {
              id: uuid(),
              bakeryId,
              weighingId: id,
              ingredientId,
              code: codeEntered,
              personId,
              receivedAt,
              takenAt,
              stationId,
            },
          ]
        : [],
    ),
  )
  await tx.$executeRaw`
    INSERT INTO lot (bakery_id, id, ingredient_id, code, received_on, note, entered_by_id, entered_at, said_with_id, station_id)
    SELECT said."bakeryId", said.id, said."ingredientId", said.code, (said."receivedAt" AT TIME ZONE bakery.time_zone)::date, '',
      said."personId", said."receivedAt", said."weighingId", said."stationId"
    FROM jsonb_to_recordset(${JSON.stringify(said)}::jsonb) AS said ("id" uuid, "bakeryId" uuid, "weighingId" uuid,
      "ingredientId" uuid, "code" text, "personId" uuid, "receivedAt" timestamptz, "takenAt" timestamptz, "stationId" uuid)
    JOIN bakery ON bakery.bakery_id = said."bakeryId"
    ORDER BY said."ingredientId", lower(said.code), said."takenAt", said.id
    ON CONFLICT (bakery_id, ingredient_id, lower(code)) WHERE ended_at IS NULL DO NOTHING`
}

/** @throws where a lot is not there, which nothing takes away */
async function linkLots(tx: Tx, named: readonly (WeighedLot & { weighingId: string })[]): Promise<void> {
  const count = await tx.$executeRaw`
    INSERT INTO weighing_lot (bakery_id, weighing_id, lot_id, ingredient_id, position, mass_g, mass_entered, code_entered)
    SELECT named."bakeryId", named."weighingId", coalesce(named."lotId", lot.id), named."ingredientId", named.position,
      named."massG", named."massEntered", named."codeEntered"
    FROM jsonb_to_recordset(${JSON.stringify(named)}::jsonb) AS named ("bakeryId" uuid, "weighingId" uuid, "lotId" uuid,
      "ingredientId" uuid, "position" int, "massG" float8, "massEntered" text, "codeEntered" text)
    LEFT JOIN lot ON named."lotId" IS NULL AND lot.bakery_id = named."bakeryId" AND lot.ingredient_id = named."ingredientId"
      AND lower(lot.code) = lower(named."codeEntered") AND lot.ended_at IS NULL
    WHERE coalesce(named."lotId", lot.id) IS NOT NULL`
  if (count !== named.length) throw new Error(`${named.length - count} lots that were named are not there`)
}
