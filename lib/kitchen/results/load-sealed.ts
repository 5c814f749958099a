import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Closing } from '../../documents/closing/closing'
import { recordedHash } from '../recorded-hash'
import { contentOfTrial } from './content-of-trial'
import { firstDifference, type Difference } from './first-difference'
import type { JudgedContent } from './judge-content'
import { judgeClosing, sealsOf } from './judge-readings'

/** Whether what is in the book is what was closed. */
export type Sealed =
  /** It still is open, or ended before readings were sealed. */
  { outcome: 'open' | 'unsealed' } | SealedThere

type SealedThere =
  | { outcome: 'agrees'; hash: string }
  /** Somebody changed rows past every rule: nothing is concluded until that is cleared up. */
  | { outcome: 'differs'; hash: string; first: Difference | null }
  | { outcome: 'damaged' | 'unknown-format' }

/** Whether what is in the book is not what was closed, or cannot be told. */
export function isBroken({ outcome }: Sealed): boolean {
  return outcome === 'differs' || outcome === 'damaged' || outcome === 'unknown-format'
}

/** What was closed of a trial as it is kept, and how it stands to the book; nothing of it where that cannot be told. */
export type FoundSealed = {
  /** One hash over the values of all doughs and readings that the trial has at this moment. */
  rowsNow: string
  /** Null where nothing was closed. */
  sealed: SealedThere | null
  closed: { closing: Closing; judged: JudgedContent } | null
}

/** What was closed of a trial, judged, and whether the book and the record still say the same. */
export async function loadSealed(from: Db | Tx, bakeryId: string, trialId: string): Promise<FoundSealed> {
  const [{ rowsNow, closed: kept }, recorded] = await Promise.all([
    sealsOf(from, bakeryId, trialId),
    recordedHash(from, bakeryId, trialId, 'closing'),
  ])
  const isOfRecord = recorded === null || recorded === kept?.hash
  if (!isOfRecord || kept?.isItsText === false) return { rowsNow, sealed: { outcome: 'damaged' }, closed: null }
  if (kept === null) return { rowsNow, sealed: null, closed: null }
  const { hash, rowsSeal } = kept
  const read = await judgeClosing(from, { bakeryId, trialId, hash })
  if (read.outcome !== 'read') return { rowsNow, sealed: { outcome: read.outcome }, closed: null }
  const closed = { closing: read.closing, judged: read.judged }
  if (rowsSeal === rowsNow) return { rowsNow, sealed: { outcome: 'agrees', hash }, closed }
  const first = firstDifference(read.closing, await contentOfTrial(from, bakeryId, trialId))
  return { rowsNow, sealed: { outcome: 'differs', hash, first }, closed }
}

/** The same with what there is to say where nothing was closed. */
export function sealedOf({ sealed }: FoundSealed, isEnded: boolean): Sealed {
  return sealed ?? { outcome: isEnded ? 'unsealed' : 'open' }
}
