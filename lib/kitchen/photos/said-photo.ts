import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'
import type { SaidPhoto } from './send-photo.input'

/** What is said of a photo, as rows hold it. */
export type PhotoRow = {
  /** Of a dough, or of the label of a lot. */
  batchId: string | null
  piece: number | null
  ingredientId: string | null
  lotCode: string | null
  personId: string
  takenAt: Date
  sentBytes: number
  sentHash: string
}

/** Of a row, what is compared. */
export const saidColumns = {
  batchId: true,
  piece: true,
  ingredientId: true,
  lotCode: true,
  personId: true,
  takenAt: true,
  sentBytes: true,
  sentHash: true,
} as const

/** What a sender says of a photo, as a row would hold it. */
export function rowOfSaid(said: SaidPhoto, actor: ActorOf<'log-reading'>): PhotoRow {
  return {
    batchId: said.batchId?.toLowerCase() ?? null,
    piece: said.piece,
    ingredientId: said.label?.ingredientId.toLowerCase() ?? null,
    lotCode: said.label?.code ?? null,
    personId: actor.personId,
    takenAt: new Date(said.takenAt),
    sentBytes: said.bytes,
    sentHash: said.hash,
  }
}

/**
 * Refuses a photo under the number of another one.
 * @throws Refusal photo-clash
 */
export function mustBeSame(known: PhotoRow, said: PhotoRow): void {
  const isSame =
    known.takenAt.getTime() === said.takenAt.getTime() &&
    (['batchId', 'piece', 'ingredientId', 'lotCode', 'personId', 'sentBytes', 'sentHash'] as const).every(
      (name) => known[name] === said[name],
    )
  if (!isSame) throw new Refusal('photo-clash')
}

/** Two that send one photo at one moment wait for each other, until the transaction is over. */
export async function lockPhoto(tx: Tx, photoId: string): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`photo ${photoId.toLowerCase()}`}, 0))`
}
