import { createHash } from 'node:crypto'
import type pg from 'pg'
import { v7 as uuid } from 'uuid'

type Rows = {
  trial: { bakeryId: string; id: string; proposedById: string }
  batchId: string
  measureId: string
  count: number
}

/** Inserts readings of the pieces 1 to `count` that nobody judged, by a prepared statement each, in one transaction: the least that keeping them can take. */
export async function insertReadings(client: pg.ClientBase, { trial, batchId, measureId, count }: Rows): Promise<void> {
  const text = `INSERT INTO reading (bakery_id, id, trial_id, batch_id, measure_id, piece, repeat, value, value_entered, unit_entered, person_id, taken_at, received_at, content_hash, plausible_least, plausible_most)
    VALUES ($1, $2, $3, $4, $5, $6, 1, 480, '480', 'g', $7, $8, $8, $9, 240, 720)`
  const at = new Date()
  await client.query('BEGIN')
  for (let piece = 1; piece <= count; piece++) {
    const hash = createHash('sha256').update(`${batchId} ${piece}`).digest('hex')
    await client.query({
      name: 'insert-reading',
      text,
      values: [trial.bakeryId, uuid(), trial.id, batchId, measureId, piece, trial.proposedById, at, hash],
    })
  }
  await client.query('COMMIT')
}
