import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { AuditNote } from '../../db/append-audit'
import type { Tx } from '../../db/client'
import { command } from '../command'
import { Refusal } from '../refusal'
import { mustHaveRoom } from './must-have-room'
import { clearComing } from './clear-coming'
import { countOfPieces, mostPhotoBytes } from './photo-limits.input'
import { hashOfBytes, photoStore } from './photo-store'
import type { Picture, PictureFault } from './rewrite-picture'
import { lockPhoto, mustBeSame, rowOfSaid, saidColumns, type PhotoRow } from './said-photo'
import { sendPhotoInput } from './send-photo.input'
import { writeComing } from './write-coming'

export type SentPhoto =
  /** In the book, as this. */
  | { outcome: 'kept'; id: string; sentHash: string; hash: string; isAgain: boolean }
  /** These pieces have not come yet. */
  | { outcome: 'lacks'; id: string; pieces: number[] }
  /** All of it came, and it cannot be kept. */
  | { outcome: 'refused'; id: string; refusal: PictureFault }

/** What is on its way is no part of the record, so only what is kept has an entry in it. */
type Sent = { value: SentPhoto; audit: Omit<AuditNote, 'action'> | null }

/**
 * Says which photo comes, and asks what is lacking of it; once nothing is, it is written anew and is in the book. It is
 * kept at any point, as a note is, and moves nothing.
 * Refuses: photo-too-large, photo-clash, not-found, too-many-photos, dough-full-of-photos, label-full-of-photos, no-room-for-photos, photos-busy;
 * at `piece`: too-big.
 */
export const sendPhoto = command({
  name: 'photos.send-photo',
  input: sendPhotoInput,
  right: 'log-reading',
  prepare: async ({ actor, input }) => writeComing(actor.bakeryId, { ...input, id: input.id.toLowerCase() }),
  async run({ tx, actor, now, input, prepared }): Promise<Sent> {
    if (input.bytes > mostPhotoBytes) throw new Refusal('photo-too-large')
    const id = input.id.toLowerCase()
    const { bakeryId } = actor
    const said = rowOfSaid(input, actor)
    const key = { bakeryId_id: { bakeryId, id } }
    await lockPhoto(tx, id)
    const known = await tx.photo.findUnique({ where: key, select: { ...saidColumns, hash: true } })
    if (known) {
      mustBeSame(known, said)
      return { value: kept(id, said, known.hash, true), audit: null }
    }
    const coming = await tx.comingPhoto.findUnique({ where: key, select: saidColumns })
    if (coming) mustBeSame(coming, said)
    else await begin(tx, actor, id, said, now)
    const there = await tx.comingPhotoPiece.findMany({ where: { bakeryId, photoId: id }, select: { number: true } })
    const numbers = new Set(there.map(({ number }) => number))
    const pieces = Array.from({ length: countOfPieces(said.sentBytes) }, (_, at) => at).filter((at) => !numbers.has(at))
    // The last piece may have come since it was looked.
    if (pieces.length > 0 || prepared === null) return { value: { outcome: 'lacks', id, pieces }, audit: null }
    await clearComing(tx, bakeryId, id)
    if (typeof prepared === 'string') return { value: { outcome: 'refused', id, refusal: prepared }, audit: null }
    return keep(tx, actor, id, said, prepared, now)
  },
})

function kept(id: string, { sentHash }: PhotoRow, hash: string, isAgain: boolean): SentPhoto {
  return { outcome: 'kept', id, sentHash, hash, isAgain }
}

async function begin(tx: Tx, actor: ActorOf<'log-reading'>, id: string, said: PhotoRow, now: Date): Promise<void> {
  const { trialId, mostPieces } = await subjectOf(tx, actor.bakeryId, said)
  if (said.piece !== null && said.piece > mostPieces) throw Refusal.at('piece', 'too-big', { max: mostPieces })
  await mustHaveRoom(tx, actor, said, now)
  await tx.comingPhoto.create({
    data: { bakeryId: actor.bakeryId, id, trialId, stationId: stationOf(actor), begunAt: now, ...said },
  })
}

/** The record names the photo by both of its hashes: what was sent, and what stands in the book in its place. */
async function keep(
  tx: Tx,
  actor: ActorOf<'log-reading'>,
  id: string,
  said: PhotoRow,
  picture: Picture,
  now: Date,
): Promise<Sent> {
  const { bakeryId } = actor
  const { trialId, noted } = await subjectOf(tx, bakeryId, said)
  const { bytes, small, width, height } = picture
  const hash = hashOfBytes(bytes)
  await tx.photo.create({
    data: {
      bakeryId,
      id,
      trialId,
      stationId: stationOf(actor),
      receivedAt: now,
      ...said,
      mediaType: 'image/jpeg',
      bytes: bytes.length,
      width,
      height,
      hash,
      small,
    },
    select: { id: true },
  })
  await photoStore.keep(tx, { bakeryId, photoId: id }, bytes)
  return {
    value: kept(id, said, hash, false),
    audit: noted && { target: noted.target, after: { photo: id, ...noted.about, sent: said.sentHash, hash } },
  }
}

/**
 * What a photo is of, and what the record says of that: of a label nothing, because who took one at which moment would
 * tell which dough it was for. The record has it when its lot is confirmed.
 */
async function subjectOf(tx: Tx, bakeryId: string, { batchId, ingredientId, piece }: PhotoRow) {
  if (batchId === null) {
    const ingredient = await tx.ingredient.findUnique({
      where: { bakeryId_id: { bakeryId, id: ingredientId ?? '' } },
      select: { id: true },
    })
    if (!ingredient) throw new Refusal('not-found')
    return { trialId: null, mostPieces: 0, noted: null }
  }
  const batch = await tx.batch.findUnique({
    where: { bakeryId_id: { bakeryId, id: batchId } },
    select: { trialId: true, code: true, trial: { select: { piecesPerBatch: true } } },
  })
  if (!batch) throw new Refusal('not-found')
  const { trialId, code, trial } = batch
  return { trialId, mostPieces: trial.piecesPerBatch, noted: { target: batchId, about: { batch: code, piece } } }
}

function stationOf(actor: ActorOf<'log-reading'>): string | null {
  return actor.kind === 'station' ? actor.stationId : null
}
